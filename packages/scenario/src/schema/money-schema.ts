import { money, whole, words } from './keys.ts';
import { z } from './zod.ts';

export const moneySchema = z
  .strictObject({
    currency: words('Currency of all amounts: three capital letters', 'EUR'),
    'judged over': words(
      'Whole years over which purchases are judged; default 5 years',
      '5 years',
    ).optional(),
    interest: words('Interest of a year on money that is tied up; default 8 %', '8 %').optional(),
    'payback within': words(
      'Time in which purchases should have paid for themselves; default 3 years',
      '3 years',
    ).optional(),
    'other costs': words(
      'What the lab costs beside all that is named: rent, software, insurance, training; default none',
      '12000 per year',
      '1000 per month',
    ).optional(),
    'outside per job': money(
      'What a job that is made outside costs beside its pieces; default 0',
      35,
    ).optional(),
    equipment: z
      .enum(['there already', 'to be bought'])
      .meta({
        description:
          'Whether machines and stations that do not say how many are owned are there or have to be bought; ' +
          'default there already',
      })
      .optional(),
  })
  .meta({ description: 'Currency and rules for everything that costs money' });

export const materialsSchema = z
  .record(
    z.string(),
    z.strictObject({
      price: words('Price by weight or volume', '28 per kg', '90 per litre'),
      density: words(
        'Not needed where the machine states that of its parts (powder)',
        '1.06 g/cm3',
      ).optional(),
      waste: words('Lost on top of what goes into parts and supports; default 0 %', '8 %').optional(),
    }),
  )
  .meta({ description: 'What materials cost, by the names that parts give them' });

/** Keys of machines and stations. */
export const equipmentCosts = {
  price: money('What one of them costs to buy', 3200, '3200 EUR').optional(),
  life: words('How long one is used; default 5 years', '5 years').optional(),
  'worth at the end': money('What one is worth after that; default 0', 500).optional(),
  'yearly cost': money(
    'Service, spare parts, energy of one in a year; default 8 % of the price',
    '8 % of the price',
    250,
  ).optional(),
  owned: whole('How many are there already and need not be bought; default all', 0, 1).optional(),
  delivery: words('From the order to delivery; default 0 weeks', '6 weeks').optional(),
  commissioning: words('From delivery until it works; default 0 weeks', '1 week').optional(),
  'ramp-up': words('After that, until it gives all it can; default 0 weeks', '4 weeks').optional(),
};

/** Keys of groups of people. */
export const hourlyCosts = {
  'hourly cost': money(
    'What an hour of one of them costs, with all that comes on top of wages; every hour of the roster counts',
    41,
    '41 per hour',
  ).optional(),
  overtime: words('What comes on top for hours of overtime; default 25 %', '25 %').optional(),
};

/** Keys of part types. */
export const partCosts = {
  'material cost': money(
    'Material of one piece with supports and waste; default from its shape and the price of its material',
    '1.20',
  ).optional(),
  'price outside': money('What one piece costs when it is made outside', 14.5).optional(),
};
