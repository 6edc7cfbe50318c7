/** What a browser with trusted types wants to be given where text becomes markup or code. */
interface Policy {
  createHTML(text: string): string;
  createScriptURL(url: string): string;
}

interface PolicyFactory {
  createPolicy(name: string, rules: Policy): Policy;
}

/** Named in the policy of the page, which allows no other. */
const NAME = 'buildweek';

const factory = (globalThis as { readonly trustedTypes?: PolicyFactory }).trustedTypes;
const asItIs = (text: string): string => text;

/** For what the workers of this page have written, who escape all that comes from a scenario, and for nothing else. */
export const trusted: Policy = factory?.createPolicy(NAME, {
  createHTML: asItIs,
  createScriptURL: asItIs,
}) ?? {
  createHTML: asItIs,
  createScriptURL: asItIs,
};
