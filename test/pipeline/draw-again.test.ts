import { describe, expect, it } from 'vitest';
import type { DrawOutcome } from '../../pipeline/commands/outcome.js';
import type { DrawRequest } from '../../pipeline/draw-again.js';
import { drawAgain } from '../../pipeline/run.js';
import { auditText, folderWith, textOf } from './publish-audit.js';

const io = folderWith();
const asked = (request: Partial<DrawRequest>): Promise<DrawOutcome> =>
  drawAgain(auditText, io, { figure: 'prediction-error', cohorts: [], ...request }, () => {});
const file = 'reports/hand-audit.figures/prediction-error.svg';

describe('draw', () => {
  it('writes one figure beside the report, with the width asked for, and nothing else', async () => {
    const outcome = await asked({ width: 120, formats: ['svg', 'pdf'] });
    expect(outcome).toMatchObject({ kind: 'drawn', files: [file, file.replace('svg', 'pdf')] });
    expect([...io.files.keys()].filter((path) => path.startsWith('reports/'))).toEqual([
      file,
      file.replace('svg', 'pdf'),
    ]);
    // 120 mm are 340.16 pt.
    expect(textOf(io, file)).toMatch(/^<svg[^>]* width="340\.16pt"/);
  });

  it('draws for another profile, in another palette', async () => {
    await asked({ artwork: 'web', colours: 'okabe-ito', formats: ['svg'] });
    expect(textOf(io, file)).toMatch(/^<svg[^>]* width="640pt"/);
    // First colours of the sets: the theme's, and Okabe and Ito's blue.
    expect(textOf(io, file)).not.toContain('#28398a');
    await asked({ colours: 'grey', formats: ['svg'] });
    const colours = new Set(textOf(io, file).match(/(?<==")#[0-9a-f]{6}/g));
    expect([...colours].filter((colour) => !/^#(..)\1\1$/.test(colour))).toEqual([]);
  });

  it('shows the cohorts asked for', async () => {
    const text = auditText.includes('cohorts:') ? auditText : `${auditText}\ncohorts: { by: technique }\n`;
    const drawn = await drawAgain(
      text,
      io,
      { figure: 'prediction-error', cohorts: ['all'], formats: ['svg'] },
      () => {},
    );
    expect(drawn).toMatchObject({ kind: 'drawn' });
    expect(textOf(io, file)).toContain('>All eyes</text>');
  });

  it('says what there is instead of a name that the audit does not have', async () => {
    expect(await asked({ figure: 'predicton' })).toMatchObject({
      kind: 'no figure',
      known: expect.arrayContaining(['prediction-error']),
    });
    expect(await asked({ artwork: 'poster' })).toMatchObject({
      kind: 'no artwork',
      known: expect.arrayContaining(['web']),
    });
    expect(await asked({ cohorts: ['nobody'] })).toMatchObject({
      kind: 'no cohort',
      known: expect.arrayContaining(['all']),
    });
    // 29 times 14 pt are 143 mm.
    expect(await asked({ artwork: 'slide', width: 60 })).toEqual({ kind: 'no room', least: '143' });
  });
});
