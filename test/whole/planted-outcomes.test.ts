import { describe, expect, it } from 'vitest';
import { dayOf } from '../../sample-exports/generator/calendar.js';
import { type Eye, makeEyes } from '../../sample-exports/generator/eyes.js';
import { SEED } from '../../sample-exports/generator/truth.js';
import { type Audit, auditOf } from './audit.js';
import { auditText, faultlessSheets, filesOf } from './sample.js';

/** The sample's eyes, with effects of this test's own put into what their devices would have measured. */
const eyes = makeEyes(SEED);

/** From this day on the eyes of one surgeon end more long-sighted than planned, dioptres. */
const drift = { surgeon: 'S1', from: dayOf('2025-06-01'), by: 0.75 };
/** Cells that the manual technique costs more than the sample's own loss, as a share. */
const cost = 0.06;

function drifted(eye: Eye): Eye {
  const { day } = eye.operation;
  if (eye.patient.surgeon !== drift.surgeon || day < drift.from) return eye;
  const examinations = eye.examinations.map((exam) =>
    exam.day <= day || !exam.refraction
      ? exam
      : { ...exam, refraction: { ...exam.refraction, sphere: exam.refraction.sphere + drift.by } },
  );
  return { ...eye, examinations };
}

function costly(eye: Eye): Eye {
  if (eye.operation.technique !== 'manual') return eye;
  const [before, after] = eye.further.cells;
  return { ...eye, further: { ...eye.further, cells: [before, Math.round(after - cost * before)] } };
}

const monitored = `${auditText()}monitoring: { outcome: prediction_error/share_within_0.50, acceptable: 0.7, unacceptable: 0.5 }\n`;
const audited = (made: readonly Eye[]): Promise<Audit> => auditOf(monitored, filesOf(faultlessSheets(made)));
const plain = await audited(eyes);
const changed = await audited(eyes.map(drifted).map(costly));
const series = 'monitoring:prediction_error/share_within_0.50';
const signals = ({ results }: Audit, surgeon: string) =>
  results.get(series, `surgeon=${surgeon}`, 'count_signals').value;

describe('a drift in one surgeon’s last months', () => {
  it('is signalled, after it began, for that surgeon alone', () => {
    expect(signals(plain, 'S1')).toBe(0);
    expect(signals(changed, 'S1')).toBeGreaterThan(0);
    expect(signals(changed, 'S2')).toBe(signals(plain, 'S2'));
    const before = eyes.filter(
      ({ operation, patient }) => patient.surgeon === 'S1' && operation.day < drift.from,
    ).length;
    const at = changed.results.get(series, 'surgeon=S1', 'signal_1').value as number;
    // Some of the eyes before the drift have no outcome, so that the signal's place counts fewer.
    expect(at).toBeGreaterThan(0.8 * before);
  });

  it('is seen in the running share', () => {
    const running = ({ results }: Audit) => {
      const rows = results.rows.filter(
        ({ measure, group, statistic }) =>
          measure === series && group === 'surgeon=S1' && statistic.startsWith('share_running_to_'),
      );
      return rows.at(-1)?.value as number;
    };
    expect(running(changed)).toBeLessThan(running(plain) - 0.2);
  });
});

describe('a difference between techniques', () => {
  const pair = 'technique=laser-assisted vs manual';
  const row = ({ results }: Audit, measure: string, statistic: string) => results.get(measure, pair, statistic);

  // The generator's ultrasound lasts 44 s on average by hand and 31 s after the laser, at 0.2 of energy a second.
  it('in energy and time is found', () => {
    const energy = row(plain, 'effective_energy', 'shift');
    expect(energy.value).toBeLessThan(0);
    expect(energy.ci_high).toBeLessThan(0);
    expect((energy.ci_low as number) < -0.2 * 13 && (energy.ci_high as number) > -0.2 * 13 - 1).toBe(true);
    const time = row(plain, 'phaco_time_s', 'shift');
    expect((time.ci_low as number) <= -13 && (time.ci_high as number) >= -13).toBe(true);
  });

  it('in cells is found where it is, at its size, and not where it is not', () => {
    const found = row(changed, 'endothelial_loss', 'difference_mean');
    expect((found.ci_low as number) < -100 * cost && (found.ci_high as number) > -100 * cost).toBe(true);
    expect(found.ci_high).toBeLessThan(0);
    const none = row(plain, 'endothelial_loss', 'difference_mean');
    expect((none.ci_low as number) < 0 && (none.ci_high as number) > 0).toBe(true);
  });
});
