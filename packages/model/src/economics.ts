/**
 * What the lab and its work cost, in one currency, as a scenario states it. Kept apart from {@link Lab}, because the
 * simulator knows no money. References are by name to the lists of the lab.
 */
export interface Economics {
  /** As written: `EUR`. */
  readonly currency: string;
  /** Years over which a purchase is judged. */
  readonly years: number;
  /** Yearly rate at which later money is discounted, 0.08 for 8 %. */
  readonly interest: number;
  /** Years within which a purchase should have paid for itself. */
  readonly paybackYears: number;
  /** One entry for each machine group and station group of the scenario. */
  readonly equipment: readonly EquipmentCost[];
  readonly people: readonly PeopleCost[];
  readonly materials: readonly MaterialCost[];
  readonly parts: readonly PartCost[];
  /** Price of work sent out for each job, whatever is in it. */
  readonly outsidePerJob: number;
  /** Yearly cost that belongs to nothing else: rent, software, insurance, quality system. */
  readonly otherPerYear: number;
}

/** Cost of one machine or station of a group. */
export interface EquipmentCost {
  readonly group: string;
  readonly price: number;
  readonly lifeYears: number;
  /** What it is worth at the end of its life. */
  readonly residualValue: number;
  /** Service contract, spare parts, energy, space: whatever it makes. */
  readonly yearlyCost: number;
  /** How many of the group are there already and need not be bought. */
  readonly owned: number;
  /** From the order until the machine makes parts, weeks: delivery and commissioning. */
  readonly leadWeeks: number;
  /** After that: so many weeks until it gives all it can, rising evenly from nothing. */
  readonly rampUpWeeks: number;
}

export interface PeopleCost {
  readonly group: string;
  /** For each hour of the roster, whatever is done in it; closing days, leave and absence are paid as well. */
  readonly perHour: number;
  /** Supplement on hours of overtime, 0.25 for 25 %. */
  readonly overtimeSupplement: number;
}

export interface MaterialCost {
  /** As in {@link PartType.material}. */
  readonly material: string;
  /** For each kg. */
  readonly pricePerKilogram: number;
  /** g/cm3; null where only machines use it that state the density of their parts. */
  readonly density: number | null;
  /** Material lost for each kg that goes into parts and supports, 0.1 for 10 %: purge, resin that sticks, old powder. */
  readonly waste: number;
}

/** What one piece of a part type costs apart from machines and people. */
export interface PartCost {
  readonly part: string;
  /** Material of one piece with supports, waste included; null: from its shape and {@link MaterialCost}. */
  readonly material: number | null;
  /** Price of one piece made outside; null: not stated, so that it cannot be sent out or compared. */
  readonly outside: number | null;
}
