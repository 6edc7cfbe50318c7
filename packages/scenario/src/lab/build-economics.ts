import type { Economics, Lab, MaterialCost, PartCost, PartType } from '@buildweek/model';
import type { ScenarioMaterialCost, ScenarioMoney } from '../scenario.ts';

/** What the lab and its work cost, for the parts of the lab in their order; null when nothing is said of money. */
export function buildEconomics(money: ScenarioMoney | null, lab: Lab): Economics | null {
  if (money === null) return null;
  const { currency, machines, stations, materials, parts, ...rest } = money;
  return {
    ...rest,
    currency: currency.code,
    equipment: [...machines, ...stations],
    materials: materials.map(materialCost),
    parts: lab.parts.map((part) => partCost(part, parts)),
  };
}

function materialCost({ price, ...material }: ScenarioMaterialCost): MaterialCost {
  if (price === null || !('perCubicCentimetre' in price)) {
    return { ...material, pricePerKilogram: price?.perKilogram ?? 0 };
  }
  // One g/cm3 is one kg in a litre.
  return { ...material, pricePerKilogram: (1000 * price.perCubicCentimetre) / (material.density ?? 1) };
}

/** Where nothing is built, nothing is made of material unless the part says so. */
function partCost(part: PartType, costs: readonly PartCost[]): PartCost {
  const said = costs.find((cost) => cost.part === part.name);
  const usual = part.stages.some((stage) => stage.kind === 'build') ? null : 0;
  return { part: part.name, material: said?.material ?? usual, outside: said?.outside ?? null };
}
