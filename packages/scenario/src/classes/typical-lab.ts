/**
 * A lab with one machine of every class, for questions about a part without a lab of one's own. All of its times
 * are common practice, no source, beside what the classes say.
 */
export const TYPICAL_LAB = `buildweek: 1
name: A lab of typical machines
hours:
  day: { mon-fri: 08:00-12:00 12:30-16:30 }

people:
  technicians: { count: 2, hours: day, skills: [prepare files, run machines, hand work] }

machines:
  small extruder: { class: small MEX }
  heated extruder: { class: heated MEX }
  mask vat: { class: small mask VPP }
  laser vat: { class: large laser VPP }
  compact powder machine: { class: compact PBF }
  large powder machine: { class: large PBF, material change: none } # it keeps its powder

stations:
  washer: { class: wash bath }
  cure unit: { class: cure unit }
  powder bench: { class: powder station }
  blaster: { class: blasting cabinet }

routes:
  small extrusion:
    - prepare file: { by: prepare files, takes: 5 to 30 min per job, usually 10 }
    - build: { on: small extruder }
    - remove supports:
        { by: hand work, takes: 1 min per part plus 0.3 to 1.5 min per cm2 of support contact, usually 0.6, may pause: yes, for finish: cleaned }
    - sand:
        { by: hand work, takes: 2 min per part plus 0.2 to 0.8 min per cm2 of surface, usually 0.4, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 0.5 to 10 min per part, usually 3, may pause: yes }
  heated extrusion:
    - prepare file: { by: prepare files, takes: 10 to 40 min per job, usually 15 }
    - build: { on: heated extruder }
    - remove supports:
        { by: hand work, takes: 2 min per part plus 0.4 to 2 min per cm2 of support contact, usually 0.8, may pause: yes, for finish: cleaned }
    - sand:
        { by: hand work, takes: 2 min per part plus 0.2 to 0.8 min per cm2 of surface, usually 0.4, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 1 to 15 min per part, usually 4, may pause: yes }
  small vat:
    - prepare file: { by: prepare files, takes: 10 to 45 min per job, usually 20 }
    - build: { on: mask vat }
    - wash: { on: washer }
    - dry: { wait: 20 min }
    - cure: { on: cure unit }
    - remove supports:
        { by: hand work, takes: 1 min per part plus 0.3 to 1.2 min per cm2 of support contact, usually 0.5, may pause: yes, for finish: cleaned }
    - sand:
        { by: hand work, takes: 1 min per part plus 0.05 to 0.3 min per cm2 of surface, usually 0.1, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 0.5 to 10 min per part, usually 3, may pause: yes }
  large vat:
    - prepare file: { by: prepare files, takes: 10 to 60 min per job, usually 25 }
    - build: { on: laser vat }
    - wash: { on: washer }
    - dry: { wait: 30 min }
    - cure: { on: cure unit, takes: 30 to 120 min per batch, usually 60 }
    - remove supports:
        { by: hand work, takes: 1 min per part plus 0.3 to 1.2 min per cm2 of support contact, usually 0.5, may pause: yes, for finish: cleaned }
    - sand:
        { by: hand work, takes: 1 min per part plus 0.05 to 0.3 min per cm2 of surface, usually 0.1, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 1 to 15 min per part, usually 4, may pause: yes }
  compact powder:
    - build: { on: compact powder machine }
    - unpack: { on: powder bench }
    - remove powder: { by: hand work, takes: 0.5 to 2 min per part, usually 1, may pause: yes }
    - blast: { on: blaster, for finish: cleaned }
    - sand:
        { by: hand work, takes: 1 min per part plus 0.05 to 0.4 min per cm2 of surface, usually 0.15, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 0.5 to 10 min per part, usually 2, may pause: yes }
  large powder:
    - build: { on: large powder machine }
    - unpack: { on: powder bench, takes: 45 to 180 min per build, usually 90 }
    - remove powder: { by: hand work, takes: 0.5 to 2 min per part, usually 1, may pause: yes }
    - blast: { on: blaster, for finish: cleaned }
    - sand:
        { by: hand work, takes: 1 min per part plus 0.05 to 0.4 min per cm2 of surface, usually 0.15, may pause: yes, for finish: smooth }
    - inspect: { by: hand work, takes: 0.5 to 10 min per part, usually 2, may pause: yes }

parts:
  cube: { route: small extrusion, size: 20 x 20 x 20 mm, volume: 8 cm3, surface: 24 cm2, support contact: 0 mm2 }

demand:
  cube: { jobs: 1 per week }
`;
