import type { Lab, PartType } from '@buildweek/model';
import { nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { ScenarioMaterialCost, ScenarioMoney } from '../scenario.ts';

/** Nothing that costs something may count as zero because nobody has said it: what is missing is reported. */
export function checkMoney(money: ScenarioMoney | null, lab: Lab, reading: Reading): void {
  if (money === null) return;
  for (const part of lab.parts) checkMaterialOf(part, money, reading);
  checkSentOut(money, lab, reading);
  for (const material of money.materials) {
    const { price } = material;
    const isPricedByVolume = price !== null && 'perCubicCentimetre' in price;
    if (isPricedByVolume || isWeighed(material.material, money, lab)) checkDensity(material, reading);
  }
}

function checkMaterialOf(part: PartType, money: ScenarioMoney, reading: Reading): void {
  const path = ['parts', part.name];
  const isBuilt = part.stages.some((stage) => stage.kind === 'build');
  if (ownMaterial(part, money) !== null) return;
  if (!isBuilt) {
    reading.assume([...path, 'material cost'], '0 (nothing is built)', 'default of the program');
    return;
  }
  if (reading.hasErrorsWithin(path) || reading.isMisspelt(path)) return;
  if (reading.isMisspelt([]) || reading.isBroken(['materials'])) return;
  // What is wrong with its machine may be why it has no shape.
  if (
    part.stages.some(
      (stage) => stage.kind === 'build' && reading.isMisspelt(['machines', stage.machineGroup]),
    )
  )
    return;
  if (part.print?.kind !== 'shape') {
    reading.report(path, 'key', {
      message: `What the material of one "${part.name}" costs is missing, and it has no shape from which it follows.`,
      found: part.name,
      expected: 'an amount for one piece, with supports and waste',
      write: 'material cost: 1.20',
    });
    return;
  }
  const names = money.materials.map(({ material }) => material);
  if (names.includes(part.material)) return;
  const meant = nearest(part.material, names);
  reading.report(path, 'key', {
    message: `The material "${part.material}" of "${part.name}" has no price.`,
    found: part.name,
    expected: 'a price of the material, or what that of one piece costs',
    write:
      meant === null
        ? `materials: { ${part.material}: { price: 28 per kg, density: 1.1 g/cm3 } }, or: material cost: 1.20`
        : `material: ${meant}, or a price of "${part.material}" under materials`,
  });
}

/** What may be made outside has a price there. */
function checkSentOut(money: ScenarioMoney, lab: Lab, reading: Reading): void {
  for (const { part, sentOut } of lab.demand) {
    const path = ['parts', part];
    if (sentOut === null || reading.isInDoubt(path, 'price outside')) continue;
    if (money.parts.every((cost) => cost.part !== part || cost.outside !== null)) continue;
    reading.report(path, 'key', {
      message: `"${part}" may be made outside, and what one piece costs there is missing.`,
      found: part,
      expected: 'an amount for one piece',
      write: 'price outside: 14.50',
    });
  }
}

function checkDensity({ material, density }: ScenarioMaterialCost, reading: Reading): void {
  const path = ['materials', material];
  if (density !== null || reading.isInDoubt(path, 'density')) return;
  reading.report(path, 'key', {
    message: `"density" is missing in "${material}": its weight in a part is not known.`,
    found: material,
    expected: 'a mass in a volume',
    write: 'density: 1.1 g/cm3',
  });
}

/** Whether the weight of a material in a part follows from its volume: machines with powder state its density. */
function isWeighed(material: string, money: ScenarioMoney, lab: Lab): boolean {
  return lab.parts.some((part) => {
    if (part.material !== material || part.print?.kind !== 'shape') return false;
    if (ownMaterial(part, money) !== null) return false;
    const stage = part.stages.find((candidate) => candidate.kind === 'build');
    const group = lab.machines.find(
      (machine) => stage?.kind === 'build' && machine.name === stage.machineGroup,
    );
    return group?.shaped?.powder === null;
  });
}

function ownMaterial(part: PartType, money: ScenarioMoney): number | null {
  return money.parts.find((cost) => cost.part === part.name)?.material ?? null;
}
