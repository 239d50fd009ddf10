import type { CanonicalTables } from '../records/canonical.js';
import { type Findings, severities } from '../records/finding.js';

/**
 * Eyes about which anything waits to be confirmed, so that an outcome can be given without them.
 *
 * @param findings  of all stages; what the clinic has confirmed is no query any more
 * @returns one number an eye, in canonical order: 1 queried, 0 not. Queries about a whole file mark no eye
 * @example queriedEyes(findings, tables)[eye] // 1
 */
export function queriedEyes(findings: Findings, { eyes }: Pick<CanonicalTables, 'eyes'>): Uint8Array {
  const queried = new Uint8Array(eyes.numRows());
  const query = severities.indexOf('query');
  for (let i = 0; i < findings.length; i++) {
    const eye = findings.eye[i] as number;
    if (findings.severity[i] === query && eye >= 0) queried[eye] = 1;
  }
  return queried;
}
