import { formatEstimate, PLAIN } from '@buildweek/charts';
import type { Estimate, Trouble } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** What went wrong, machines and stations first, then parts; empty when nothing did. */
export function troubleTables({ equipment, parts }: Trouble, style: Style): string {
  const tables: string[] = [];
  if (equipment.length > 0) {
    tables.push(
      tableText(
        [
          words('machine or station group'),
          numbers('breakdowns a week'),
          numbers('hours down a week'),
          numbers('lost builds a week'),
          numbers('maintenance and tests, hours a week'),
        ],
        equipment.map((group) => ({
          cells: [
            group.group,
            figure(group.breakdownsPerWeek),
            figure(group.hoursDownPerWeek),
            figure(group.failedBuildsPerWeek),
            figure(group.hoursOfMaintenancePerWeek),
          ],
        })),
        style,
      ),
    );
  }
  if (parts.length > 0) {
    tables.push(
      tableText(
        [
          words('part'),
          numbers('parts made again a week'),
          numbers('jobs cancelled a week'),
          words('waited too long, jobs a week'),
        ],
        parts.map((part) => ({
          cells: [
            part.part,
            figure(part.repeatedPartsPerWeek),
            figure(part.cancelledJobsPerWeek),
            part.waitedTooLong.map(({ stage, jobsPerWeek }) => `${stage}: ${figure(jobsPerWeek)}`).join('; '),
          ],
        })),
        style,
      ),
    );
  }
  return tables.join('\n\n');
}

function figure(estimate: Estimate): string {
  return formatEstimate(estimate, PLAIN);
}
