/** A bill of materials in the form of CycloneDX, as far as it is used here. */
export interface Bill {
  serialNumber?: string;
  readonly metadata: {
    timestamp: string;
    readonly component: { readonly 'bom-ref': string; name: string; readonly [field: string]: unknown };
    readonly [field: string]: unknown;
  };
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
  readonly [field: string]: unknown;
}

interface Component {
  readonly 'bom-ref': string;
  readonly name: string;
  readonly version: string;
  readonly scope?: string;
  readonly properties?: readonly { readonly name: string; readonly value: string }[];
  readonly [field: string]: unknown;
}

/**
 * The bill of one package of ours, from npm's of everything installed and what is bundled into that package: the rest are
 * tools, and not in it. The packages are bundled from where npm knows them only as tools, so their scope is set right. It
 * says when the release was, not when this ran, so that two runs say the same. Throws where npm does not know a package.
 */
export function billOf(
  whole: Bill,
  bundled: readonly { readonly name: string; readonly version: string }[],
  time: Date,
): Bill {
  const { serialNumber: _random, metadata, components, dependencies, ...rest } = whole;
  const own = metadata.component['bom-ref'];
  const held = bundled.map(({ name, version }) => {
    const found = components.find((one) => one.name === name && one.version === version);
    if (found === undefined) throw new Error(`${name} ${version} is bundled, and npm does not list it.`);
    const properties = found.properties?.filter((one) => one.name !== 'cdx:npm:package:development') ?? [];
    return { ...found, scope: 'required', properties };
  });
  const refs = new Set(held.map((one) => one['bom-ref']));
  const links = dependencies
    .filter(({ ref }) => refs.has(ref))
    .map(({ ref, dependsOn }) => ({ ref, dependsOn: dependsOn.filter((one) => refs.has(one)) }));
  return {
    ...rest,
    metadata: {
      ...metadata,
      timestamp: time.toISOString(),
      lifecycles: [{ phase: 'build' }],
      component: { ...metadata.component, name: 'doughwright' },
    },
    components: held,
    dependencies: [{ ref: own, dependsOn: [...refs] }, ...links],
  };
}
