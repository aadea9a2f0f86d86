/** Dough as heat sees it: density kg/m³, specific heat J/(kg·K), conductivity W/(m·K). Common practice, no source. */
const density = 1100;
const specificHeat = 2800;
const conductivity = 0.4;
/** Heat that still air takes from a surface, W/(m²·K). Textbook range 5–10. */
const surface = 8;

/**
 * The time, minutes, in which resting dough of this mass (grams) loses all but 37 % of its difference to the air around
 * (Newton’s law of cooling). Textbook conduction for a ball: what the air takes from its skin, and the slowest way of
 * heat through its inside. A piece of 1 kg takes some three hours, a bulk of 20 kg nearly twelve.
 */
export function restingMinutes(grams: number): number {
  const kilograms = Number.isFinite(grams) && grams > 0 ? grams / 1000 : 0;
  const radius = Math.cbrt((3 * kilograms) / (4 * Math.PI * density));
  const skin = (density * specificHeat * radius) / (3 * surface);
  const inside = (radius ** 2 * density * specificHeat) / (Math.PI ** 2 * conductivity);
  return (skin + inside) / 60;
}
