import type { Economics, Lab } from '@buildweek/model';
import { purchases } from './committed-cost.ts';

/** What the amounts leave out, a sentence each. */
export function notContained(lab: Lab, economics: Economics): string[] {
  const bought = purchases(lab, economics).map(({ group }) => group);
  const isOwned = [...lab.machines, ...lab.stations].some(({ name, count }) => {
    const cost = economics.equipment.find((candidate) => candidate.group === name);
    return count > 0 && (cost?.owned ?? 0) > 0;
  });
  return [
    economics.otherPerYear > 0
      ? 'Floor space, software, insurance, quality system and training are contained as far as the other costs of the scenario hold them.'
      : 'Floor space, software, insurance, quality system and training are not contained; "other costs" under "money" takes them.',
    'Tax, financing and inflation are not contained.',
    ...(lab.carriers.length === 0
      ? []
      : ['Carriers (tanks, platforms, build units) have no price of their own.']),
    ...(isOwned
      ? [
          'What is owned costs its share of a purchase in every finished part, but nothing in the comparison with sending out: neither what it would bring if it were sold nor when it has to be replaced.',
        ]
      : []),
    ...(bought.length === 0
      ? []
      : [
          'Purchases are paid when they are ordered; people and other costs from the first day, delivery or not.',
        ]),
    'Used powder and waste cost nothing to be rid of, and delays of work that is made outside cost nothing.',
    'Every year is taken to be like the measured weeks.',
  ];
}
