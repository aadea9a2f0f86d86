import { type Message, message } from '../../words/message.ts';
import { heatAt, heatCurve, slopeAt } from '../formula/composition.ts';
import { contentOf, curveOf, type HeatKind, hydrationHeat, pureWater } from '../heat/heat-content.ts';
import { type IceShare, iceEnthalpy } from '../heat/ice.ts';
import { type Known, known, unknown } from '../known.ts';
import { prepareMixing } from './mixing.ts';
import { heatOfStretches, runHeat } from './mixing-heat.ts';
import type { MixingInput } from './mixing-programme.ts';
import { allPortions, withPureWater } from './mixing-water.ts';

/** What brings heat to a dough, or takes it. */
export type HeatSource = HeatKind | 'ice' | 'hydration' | 'working' | 'room';

/** One source of heat against the finished dough, of cold when negative. */
export interface HeatLine {
  readonly source: HeatSource;
  /** Of a portion, its own name. */
  readonly name?: string;
  readonly kilojoules: number;
  /** What it alone does to the temperature of the dough, °C. */
  readonly celsius: number;
}

/** All heat of a programme as a bill. */
export interface HeatBill {
  /** In the order in which things go in, then hydration, working and the room. Their sum is zero. */
  readonly lines: readonly HeatLine[];
  readonly doughCelsius: number;
  /** Heat capacity of the water that is tempered, kJ/K; zero where the programme tempers none. */
  readonly waterKilojoulesPerKelvin: number;
}

/** The water of a bill: its temperature, °C, and the ice in it. */
export interface BilledWater {
  readonly celsius: number;
  readonly ice?: Pick<IceShare, 'iceGrams' | 'tapGrams'>;
  readonly tapCelsius?: number;
  readonly iceCelsius?: number;
}

/**
 * Heat against the finished dough from every source: each portion, ice, heat of hydration, working, and what the room
 * gives or takes. Each is worked out by itself; that they sum to zero is the balance of energy. `water` is that of
 * the tempered portions. Unknown where the end temperature is.
 */
export function mixingBill(mixing: MixingInput, water?: BilledWater): Known<HeatBill, Message> {
  const pure = withPureWater(mixing);
  const prepared = prepareMixing(pure);
  const run = runHeat(prepared.heat, water?.celsius);
  if (!run.end.known) return run.end;
  const stretches = heatOfStretches(prepared.heat, run);
  if (stretches === undefined) return unknown(message('mixing.on-the-way'));
  const doughCelsius = run.end.value;
  const portions = allPortions(pure).filter((portion) => portion.grams > 1e-9 && portion.grams < 1e12);
  const capacity = slopeAt(curveOf(portions), doughCelsius);
  const lines: HeatLine[] = [];
  const push = (source: HeatSource, added: number, name?: string): void => {
    const at = lines.findIndex((one) => one.source === source && one.name === name);
    const kilojoules = (lines[at]?.kilojoules ?? 0) + added;
    const line = {
      source,
      ...(name === undefined ? {} : { name }),
      kilojoules,
      celsius: kilojoules / capacity,
    };
    if (at < 0) lines.push(line);
    else lines[at] = line;
  };
  const waterEnd = heatAt(waterCurve, doughCelsius);
  let waterKilograms = 0;
  for (const portion of portions) {
    const kilograms = portion.grams / 1000;
    if (portion.tempered === true && water !== undefined) {
      waterKilograms += kilograms;
      const { ice, tapCelsius } = water;
      if (ice === undefined || tapCelsius === undefined || !(ice.iceGrams > 0)) {
        push('water', kilograms * (heatAt(waterCurve, water.celsius) - waterEnd), portion.label);
        continue;
      }
      const share = ice.iceGrams / (ice.iceGrams + ice.tapGrams);
      if (share < 1)
        push('water', kilograms * (1 - share) * (heatAt(waterCurve, tapCelsius) - waterEnd), portion.label);
      push('ice', kilograms * share * (iceEnthalpy(water.iceCelsius ?? 0) - waterEnd));
      continue;
    }
    const gained = contentOf(portion) - heatAt(heatCurve(portion.composition), doughCelsius);
    push(portion.kind, kilograms * gained, portion.label);
  }
  const wet = portions.some((portion) => portion.freeWaterGrams > 0);
  const hydration = wet ? hydrationHeat(portions) : 0;
  if (hydration !== 0) push('hydration', hydration);
  push('working', stretches.working);
  push('room', stretches.room);
  return known(
    { lines, doughCelsius, waterKilojoulesPerKelvin: waterKilograms * slopeAt(waterCurve, doughCelsius) },
    'common practice',
  );
}

const waterCurve = heatCurve(pureWater);
