/** How a parameter of a build time model is called in sentences, and in which unit it is written. */
interface ParameterWords {
  readonly label: string;
  readonly unit: string;
}

const WORDS: Readonly<Record<string, ParameterWords>> = {
  rate: { label: 'rate of laying down', unit: 'mm3 per s' },
  secondsPerLayer: { label: 'time per layer', unit: 's' },
  secondsPerBottomLayer: { label: 'further time of a bottom layer', unit: 's' },
  scanRate: { label: 'scan rate', unit: 'mm2 per s' },
  hoursPerBuild: { label: 'time per build', unit: 'h' },
  hoursPerCubicCentimetre: { label: 'time per cm3 of part', unit: 'h' },
  hoursPerCentimetre: { label: 'time per cm of height', unit: 'h' },
};

/** @param name key in the model */
export function parameterWords(name: string): ParameterWords {
  return WORDS[name] ?? { label: name, unit: '' };
}
