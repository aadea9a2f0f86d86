import type { IToken } from 'chevrotain';
import type { Form } from './shared-properties.ts';
import * as t from './tokens.ts';

/** The units that a bare number at the end may have been meant in, after the two tokens before it. */
export function unitsWanted(
  form: Form,
  before: IToken | undefined,
  beforeThat: IToken | undefined,
): readonly string[] | undefined {
  const type = before?.tokenType;
  if (type === t.At && form === 'heldAt') return [' °C', ' °F'];
  if (type === t.At && form === 'settles') return [' g', ' kg'];
  if (type === t.Of && form === 'yield') return [' g', ' kg'];
  if (type === t.Warms) return [' °C/min'];
  if (type === t.Develops) return [' times'];
  if (type === t.Within && form === 'machineSpeed')
    return beforeThat?.tokenType === t.Times ? [' times'] : [' °C/min'];
  if (before === undefined && form === 'reading') return [' min'];
  if (before === undefined && form === 'rise') return ['%'];
  return unitsFor[form];
}

const unitsFor: Partial<Record<Form, readonly string[]>> = {
  temperature: [' °C', ' °F'],
  drift: [' °C', ' °F'],
  difference: [' °C', ' °F'],
  mass: [' g', ' kg'],
  volume: [' ml'],
  pieces: [' pieces'],
  ovenLoad: [' pieces', ' kg'],
  percent: ['%'],
  shareAt: ['%'],
  duration: [' min', ' h'],
  heldAt: [' h', ' min'],
  settles: [' min'],
  times: [' times'],
  energy: [' kJ', ' kcal'],
  density: [' g/ml'],
  massRange: [' kg', ' g'],
  machineSpeed: [' rpm'],
  mixSpeed: [' min'],
  yield: [' kg', ' g', ' pieces'],
  reading: [' °C'],
  endReading: [' °C', ' °F'],
  rise: [' min'],
  trialWater: [' °C', ' kg'],
  minutes: [' min', ' h'],
  stock: [' kg', ' g'],
};
