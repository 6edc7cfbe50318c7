/**
 * A print service that many share: three extruders of a generic class, two technicians on a day shift, jobs of a few
 * parts of four sizes. With one job to a build most of a platform stays empty, and a short build is over long before
 * somebody is there again.
 *
 * @param jobsPerWeek demand over all parts
 * @param sharing `jobs per build: 1`, or nothing where jobs share builds
 */
export function printService(jobsPerWeek: number, sharing: 'one job to a build' | 'shared builds'): string {
  const each = jobsPerWeek / 4;
  return `
buildweek: 1
name: A print service that many share
simulate: { weeks: 8, ignored weeks: 4, weeks to finish: 0, replications: 20, seed: shared builds }
hours:
  day: { mon-fri: 08:00-12:00 12:30-16:30 }
people:
  technicians: { count: 2, hours: day, skills: [run machines, hand work] }
machines:
  extruder:
    class: small MEX
    count: 3
    material change: none
    breaks down: never
    maintenance: none
    fails: never
    start: ${sharing === 'shared builds' ? 'when full or before closing or after 2 h' : 'at once'}
${sharing === 'shared builds' ? '' : '    jobs per build: 1\n'}
routes:
  printed:
    - build: { on: extruder, move: per build }
    - remove supports: { by: hand work, takes: 1 to 5 min per part, usually 2, may pause: yes }
parts:
  cap: { route: printed, size: 40 x 40 x 15 mm, volume: 9 cm3 }
  lever: { route: printed, size: 110 x 30 x 20 mm, volume: 26 cm3 }
  case: { route: printed, size: 90 x 70 x 35 mm, volume: 45 cm3 }
  cover: { route: printed, size: 120 x 90 x 12 mm, volume: 55 cm3 }
demand:
  cap: { jobs: ${each} per week, pieces: 1 to 6 }
  lever: { jobs: ${each} per week, pieces: 1 to 4 }
  case: { jobs: ${each} per week, pieces: 1 to 3 }
  cover: { jobs: ${each} per week, pieces: 1 to 3 }
`;
}
