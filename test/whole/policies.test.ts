import { describe, expect, it } from 'vitest';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { publishedTables } from '../../src/tables/index.js';
import { methods } from '../../src/text/methods.js';
import { warnings } from '../../src/text/warnings.js';
import { en } from '../../src/words/index.js';
import { committed } from '../sample-exports/committed.js';
import { type Audit, auditOf } from './audit.js';
import { declared } from './recomputing.js';
import { auditText, committedFiles } from './sample.js';

/** The sample's audit, its northern lane at another vertex distance, with policies. */
function withPolicies(policies: string, vertex = 14): Promise<Audit> {
  const text = auditText()
    .replace('      vertex_mm: HSA mm\n', '')
    .replace('constants: { lane_m: 5 }', `constants: { lane_m: 5, vertex_mm: ${vertex} }`)
    .replace(declared, `${declared}policies: { ${policies} }\n`);
  return auditOf(text, committedFiles());
}

const recorded = await withPolicies('lane: as-recorded');
const infinity = await withPolicies('lane: to-infinity');
const restated = await withPolicies('vertex: to-formula');

const headlines = [
  ['prediction_error', 'mean'],
  ['prediction_error', 'share_within_0.50'],
  ['target_error', 'mean'],
  ['target_error', 'share_within_0.50'],
] as const;

describe('sensitivity rows of policies', () => {
  it.each(headlines)(
    '%s, %s: what the other policy on the lane gives is what it gives where it is declared',
    (measure, statistic) => {
      for (const group of ['all', 'technique=manual']) {
        const pair = (way: string) => (group === 'all' ? `sensitivity=${way}` : `sensitivity=${way};${group}`);
        const told = recorded.results.get(measure, pair('lane-to-infinity'), statistic);
        const main = infinity.results.get(measure, group, statistic);
        expect(told.value).toBeCloseTo(main.value as number, 10);
        expect(told.ci_low).toBeCloseTo(main.ci_low as number, 10);
        const back = infinity.results.get(measure, pair('lane-as-recorded'), statistic);
        expect(back.value).toBeCloseTo(recorded.results.get(measure, group, statistic).value as number, 10);
      }
    },
  );

  it('of the vertex distance concern the prediction error alone', () => {
    const told = recorded.results.get('prediction_error', 'sensitivity=vertex-to-formula', 'mean').value as number;
    expect(told).toBeCloseTo(restated.results.get('prediction_error', 'all', 'mean').value as number, 10);
    expect(told).not.toBeCloseTo(recorded.results.get('prediction_error', 'all', 'mean').value as number, 6);
    expect(recorded.results.find('target_error', 'sensitivity=vertex-to-formula', 'mean')).toBeUndefined();
    expect(restated.results.get('target_error', 'all', 'mean')).toEqual(
      recorded.results.get('target_error', 'all', 'mean'),
    );
  });

  it('stand in the table, with what each policy would do', () => {
    const table = publishedTables.get('sensitivity')?.(recorded.results, recorded.plan, en);
    expect(table?.head.map(({ text }) => text).slice(2)).toEqual([
      'One eye per patient',
      'Without queried eyes',
      'Lane corrected to infinity',
      'Vertex restated',
    ]);
    const mean = table?.rows.find(({ label }) => label === 'Prediction error, mean');
    expect(mean?.cells[3]?.text).toMatch(/^376 eyes: 0\.08 \(/);
    const acuity = table?.rows.find(({ label }) => label.startsWith('Corrected acuity'));
    expect(acuity?.cells.slice(3).map(({ text }) => text)).toEqual(['', '']);
    expect(table?.footnotes.join(' ')).toContain('less 1/metres, as policies.lane: to-infinity would have it');
  });

  it('are not there where no refraction would be moved', async () => {
    const twelve = await withPolicies('lane: as-recorded', 12);
    const groups = new Set(twelve.rows.map(({ group }) => group));
    expect(groups).toContain('sensitivity=lane-to-infinity');
    expect(groups).not.toContain('sensitivity=vertex-to-formula');
  });
});

describe('policies', () => {
  it('are told where they are declared: in warnings, methods and tables', () => {
    for (const [audit, words] of [
      [infinity, 'infinite distance of the chart'],
      [restated, 'restated for it, meridian by meridian'],
    ] as const) {
      expect(warnings(audit.results, audit.plan, en).find(({ id }) => id === 'policy')?.text).toContain(words);
      expect(methods(audit.results, audit.plan, en)).toContain(words);
      const table = publishedTables.get('refractive-accuracy')?.(audit.results, audit.plan, en);
      expect(table?.footnotes.join(' ')).toContain(words);
    }
    expect(warnings(recorded.results, recorded.plan, en).map(({ id }) => id)).not.toContain('policy');
  });

  it('on the lane reach every visit, so that stability and outcome agree', () => {
    const at = ({ derived }: Audit) => numbersOf(derived.eyeVisits, 'spherical_equivalent');
    const [plain, corrected] = [at(recorded), at(infinity)];
    expect(integersOf(infinity.derived.eyeVisits, 'visit')).toEqual(integersOf(recorded.derived.eyeVisits, 'visit'));
    const shifts = [...corrected]
      .map((value, row) => value - (plain[row] as number))
      .filter((one) => !Number.isNaN(one));
    expect(shifts.filter((shift) => Math.abs(shift + 0.2) < 1e-9).length).toBeGreaterThan(100);
    expect(shifts.filter((shift) => Math.abs(shift + 1 / 6) < 1e-9).length).toBeGreaterThan(100);
    expect(Math.max(...shifts)).toBeLessThanOrEqual(0);
  });
});

// The second series ends at about −7 D; here its refractions are said to be found at 14 mm.
describe('a refraction beyond 3 D at another vertex distance', () => {
  it('is restated for the formulas’ 12 mm before it is compared, and counted', async () => {
    const text = auditText('wide-audit.yaml');
    const files = { 'wide.csv': committed('wide.csv') };
    const [twelve, fourteen] = [
      await auditOf(text, files),
      await auditOf(text.replace('vertex_mm: 12', 'vertex_mm: 14'), files),
    ];
    const column = ({ derived }: Audit, name: string) => numbersOf(derived.eyes, name);
    const [sphere, cylinder] = [column(twelve, 'sphere@outcome'), column(twelve, 'cylinder@outcome')];
    const moved = (power: number) => {
      const atCornea = power / (1 - 0.014 * power);
      return atCornea / (1 + 0.012 * atCornea);
    };
    const [before, after] = [column(twelve, 'prediction_error'), column(fourteen, 'prediction_error')];
    let restatedEyes = 0;
    before.forEach((error, eye) => {
      if (Number.isNaN(error)) return;
      const [s, c] = [sphere[eye] as number, cylinder[eye] as number];
      const change = (moved(s) + moved(s + c)) / 2 - (s + c / 2);
      expect(after[eye]).toBeCloseTo(error + change, 9);
      restatedEyes++;
    });
    expect(fourteen.results.get('provenance', 'all', 'vertex_restated').value).toBe(restatedEyes);
    expect(twelve.results.get('provenance', 'all', 'vertex_restated').value).toBe(0);
    // What was intended by the surgeon has no vertex distance: that error stays.
    expect(column(fourteen, 'target_error')).toEqual(column(twelve, 'target_error'));
    const table = publishedTables.get('refractive-accuracy')?.(fourteen.results, fourteen.plan, en);
    expect(table?.footnotes.join(' ')).toContain(`before they were compared with a prediction: ${restatedEyes} eyes.`);
  });
});
