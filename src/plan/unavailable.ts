import type { Plan } from '../records/plan.js';

/**
 * What audit.yaml asks for and this version does not do, by key: told in the report, so that an audit does not seem to
 * hold what it does not.
 */
export function unavailable({ outputs }: Plan): readonly string[] {
  const asked: readonly (readonly [key: string, isAsked: boolean])[] = [
    ...(['pdf', 'tiff'] as const).map((form) => [`outputs.figures: ${form}`, outputs.figures.includes(form)] as const),
  ];
  return asked.flatMap(([key, isAsked]) => (isAsked ? [key] : []));
}
