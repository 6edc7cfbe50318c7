import type { DoubtSubject, Lab } from '@buildweek/model';
import { scaleDemand } from './scale-demand.ts';
import { scalePrintTimes } from './scale-print-times.ts';
import { scaleRush } from './scale-rush.ts';
import { scaleAbsence, scaleBreakdowns, scaleFailedBuilds, scaleRejects } from './scale-troubles.ts';
import { scaleAttendedWork, scaleStage } from './scale-work-times.ts';

/** The lab as it is when what is in doubt is so many times what was said. Factors of several doubts multiply. */
export function applyDoubt(lab: Lab, about: DoubtSubject, factor: number): Lab {
  switch (about.kind) {
    case 'demand':
      return scaleDemand(lab, about.of, factor);
    case 'work times':
      if (about.by === 'stage') return scaleStage(lab, about.of, factor);
      return scaleAttendedWork(lab, about.by === 'skill' ? about.of : null, factor);
    case 'print times':
      return scalePrintTimes(lab, about.of, factor);
    case 'breakdowns':
      return scaleBreakdowns(lab, about.of, factor);
    case 'failed builds':
      return scaleFailedBuilds(lab, about.of, factor);
    case 'rejects':
      return scaleRejects(lab, about.of, factor);
    case 'absence':
      return scaleAbsence(lab, about.of, factor);
    case 'share of rush':
      return scaleRush(lab, about.of, factor);
  }
}
