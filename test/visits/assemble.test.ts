// The rules are those of ../shared/spec/7-model.md §8 and 6-settled.md ("outcome exam", "the exam before surgery").
import { describe, expect, it } from 'vitest';
import { exam, examined, followUp } from './exams.js';

const visit = (
  name: string,
  days: readonly [number, number] | undefined,
  aim: number | undefined,
  labels: string[] = [],
) => ({
  name,
  days,
  aim,
  labels,
});

describe('the outcome visit', () => {
  it('is anchored at the complete refraction nearest the aim', async () => {
    const { chosen, assembly } = await examined([
      exam(40, { sph: '-1.00' }),
      exam(70, { sph: '-0.25' }),
      exam(100, { sph: '+0.50' }),
    ]);
    expect(chosen('refractions')).toBe(3);
    expect(assembly.visits[0]?.anchorDay[0]).toBe(70);
  });

  it('is the later of two refractions equally far from the aim', async () => {
    // Aim 74: days 64 and 84.
    expect((await examined([exam(84, { sph: '1' }), exam(64, { sph: '2' })])).chosen('refractions')).toBe(2);
    expect((await examined([exam(64, { sph: '2' }), exam(84, { sph: '1' })])).chosen('refractions')).toBe(3);
  });

  it('passes over a refraction without a cylinder, and one that a rule set aside', async () => {
    const rows = [exam(74, { sph: '0.25', cyl: '' }), exam(75, { sph: '-50' }), exam(110, { sph: '0.50' })];
    const { chosen } = await examined(rows);
    expect(chosen('refractions')).toBe(4);
  });

  it('takes of every other kind the row nearest the anchor, not nearest the aim', async () => {
    const { chosen } = await examined([
      exam(50, { sph: '-0.25' }),
      exam(45, { cdva: '0.1' }),
      exam(74, { cdva: '0.2' }),
      exam(119, { k: '43.00,44.00' }),
    ]);
    expect(chosen('refractions')).toBe(2);
    expect(chosen('corrected')).toBe(3);
    expect(chosen('keratometries')).toBe(5);
  });

  it('takes the later of two rows equally far from the anchor', async () => {
    const { chosen } = await examined([exam(70, { sph: '0' }), exam(65, { cdva: '0.1' }), exam(75, { cdva: '0.0' })]);
    expect(chosen('corrected')).toBe(4);
  });

  it('holds both ends of its window and no day outside', async () => {
    expect((await examined([exam(28, { sph: '0' })])).chosen('refractions')).toBe(2);
    expect((await examined([exam(120, { sph: '0' })])).chosen('refractions')).toBe(2);
    const outside = await examined([exam(27, { sph: '0' }), exam(121, { sph: '0' })]);
    expect(outside.chosen('refractions')).toBeUndefined();
    expect(outside.assembly.outcomeVisit[0]).toBe(0);
    expect(outside.assembly.visits[0]?.seen[0]).toBe(0);
  });

  it('is anchored at another measurement where nobody refracted', async () => {
    const { chosen, assembly } = await examined([
      exam(30, { cdva: '0.1' }),
      exam(72, { k: '43.00,44.00' }),
      exam(100, { cdva: '0.0' }),
    ]);
    expect(assembly.visits[0]?.anchorDay[0]).toBe(72);
    expect(chosen('refractions')).toBeUndefined();
    expect(chosen('keratometries')).toBe(3);
    // 100 is 28 days from 72, 30 is 42.
    expect(chosen('corrected')).toBe(4);
  });

  it('is anchored at the later of two other measurements equally far from the aim, whatever their kind', async () => {
    const acuityLater = [exam(64, { k: '43.00,44.00' }), exam(84, { cdva: '0.0' })];
    const corneaLater = [exam(84, { k: '43.00,44.00' }), exam(64, { cdva: '0.0' })];
    for (const rows of [acuityLater, corneaLater]) {
      const { assembly } = await examined(rows);
      expect(assembly.visits[0]?.anchorDay[0]).toBe(84);
    }
  });
});

describe('several files', () => {
  const second = { second: [exam(70, { sph: '-2.00' })] };

  it('of two devices on one day the first in audit.yaml is taken', async () => {
    const { chosen } = await examined([exam(70, { sph: '-1.00' })], {}, second);
    expect(chosen('refractions')).toBe(2);
  });

  it('the preferred file goes before the order of audit.yaml', async () => {
    const { chosen } = await examined([exam(70, { sph: '-1.00' })], { prefer: ['second.csv'] }, second);
    expect(chosen('refractions')).toBe('second 2');
  });

  it('a nearer day goes before the preferred file', async () => {
    const { chosen } = await examined([exam(73, { sph: '-1.00' })], { prefer: ['second.csv'] }, second);
    expect(chosen('refractions')).toBe(2);
  });
});

describe('a list of outcome visits', () => {
  const listed = followUp({
    visits: [visit('1 month', [21, 45], 33), visit('3 months', [46, 135], 90)],
    outcome: ['3 months', '1 month'],
  });

  it('takes the first visit of the list that has a refraction', async () => {
    const { chosen, assembly } = await examined([exam(30, { sph: '1' }), exam(91, { sph: '2' })], listed);
    expect(chosen('refractions')).toBe(3);
    expect(assembly.outcomeVisit[0]).toBe(2);
    expect(chosen('refractions', '1 month')).toBe(2);
  });

  it('passes over a visit at which nobody refracted, and takes all measures from the one it chose', async () => {
    const { chosen, assembly } = await examined(
      [exam(30, { sph: '1', cdva: '0.1' }), exam(91, { cdva: '0.0' })],
      listed,
    );
    expect(assembly.outcomeVisit[0]).toBe(1);
    expect(chosen('corrected')).toBe(2);
  });

  it('takes the first visit that has anything where no visit has a refraction', async () => {
    const { chosen, assembly } = await examined([exam(30, { cdva: '0.1' }), exam(91, { cdva: '0.0' })], listed);
    expect(assembly.outcomeVisit[0]).toBe(2);
    expect(chosen('corrected')).toBe(3);
  });
});

describe('labels', () => {
  const labelled = followUp({
    visits: [visit('1 month', [21, 45], 33, ['4w', '1M']), visit('3 months', undefined, undefined, ['3M'])],
  });

  it('stand for a visit where the row has no day, whatever their case', async () => {
    const { chosen, assembly } = await examined([exam('', { visit: '4W', sph: '1' })], labelled);
    expect(chosen('refractions')).toBe(2);
    expect(assembly.visits[0]?.anchorDay[0]).toBe(-(2 ** 31));
  });

  it('alone decide for a visit without a window', async () => {
    const { chosen } = await examined([exam(90, { sph: '1' }), exam(95, { visit: '3M', sph: '2' })], labelled);
    expect(chosen('refractions', '3 months')).toBe(3);
  });

  it('give way to the day where both stand, unless audit.yaml lets them win', async () => {
    const rows = [exam(30, { visit: '3M', sph: '1' })];
    const byDay = await examined(rows, labelled);
    expect([byDay.chosen('refractions', '1 month'), byDay.chosen('refractions', '3 months')]).toEqual([2, 2]);
    const byLabel = await examined(rows, { follow_up: { ...labelled.follow_up, visit_by: 'label' } });
    expect([byLabel.chosen('refractions', '1 month'), byLabel.chosen('refractions', '3 months')]).toEqual([
      undefined,
      2,
    ]);
  });

  it('are passed over where another row of the visit has a day', async () => {
    const { chosen } = await examined([exam('', { visit: '1M', sph: '1' }), exam(22, { sph: '2' })], labelled);
    expect(chosen('refractions')).toBe(3);
  });

  it('before stands for before surgery, and so do the words declared for it', async () => {
    const { chosen } = await examined(
      [exam('', { visit: 'preop', sph: '1' }), exam('', { visit: 'before', cdva: '0.5' })],
      followUp({ before: { within_days: 400, labels: ['preop'] } }),
    );
    expect([chosen('refractions', 'before'), chosen('corrected', 'before')]).toEqual([2, 3]);
  });
});

describe('before surgery', () => {
  it('each kind takes its own last row', async () => {
    const { chosen } = await examined([
      exam(-90, { sph: '1', cdva: '0.5' }),
      exam(-20, { sph: '2' }),
      exam(-5, { k: '43.00,44.00' }),
      exam(30, { sph: '9', cdva: '0.0', k: '43.00,44.00' }),
    ]);
    expect(chosen('refractions', 'before')).toBe(3);
    expect(chosen('corrected', 'before')).toBe(2);
    expect(chosen('keratometries', 'before')).toBe(4);
  });

  it('reaches back as far as declared, and no farther', async () => {
    const rows = [exam(-401, { sph: '1' }), exam(-400, { cdva: '0.5' })];
    const { chosen } = await examined(rows);
    expect([chosen('refractions', 'before'), chosen('corrected', 'before')]).toEqual([undefined, 3]);
    const wider = await examined(rows, followUp({ before: { within_days: 500, labels: [] } }));
    expect(wider.chosen('refractions', 'before')).toBe(2);
  });
});

describe('the day of surgery', () => {
  const rows = [exam(-10, { sph: '1' }), exam(0, { sph: '2' })];
  const after = [visit('outcome', [0, 120], 0)];

  it('is neither before nor after unless declared', async () => {
    const { chosen } = await examined(rows, followUp({ visits: after }));
    expect([chosen('refractions', 'before'), chosen('refractions')]).toEqual([2, undefined]);
  });

  it('is before, or after, where audit.yaml says so', async () => {
    const before = await examined(rows, followUp({ visits: after, day_of_surgery: 'before' }));
    expect([before.chosen('refractions', 'before'), before.chosen('refractions')]).toEqual([3, undefined]);
    const later = await examined(rows, followUp({ visits: after, day_of_surgery: 'after' }));
    expect([later.chosen('refractions', 'before'), later.chosen('refractions')]).toEqual([2, 3]);
  });
});

describe('a second operation', () => {
  const rows = [exam(40, { sph: '1' }), exam(74, { sph: '2' })];
  const on = (date: string, what: string) => ({ operations: [`A1,R,${date},${what}`] });

  it('ends the follow-up: later examinations are left out', async () => {
    // 2025-04-20 is day 50.
    for (const what of ['reposition', 'exchange', 'enhancement', 'lens']) {
      const { chosen } = await examined(rows, {}, on('2025-04-20', what));
      expect(chosen('refractions'), what).toBe(2);
    }
  });

  it('keeps them where audit.yaml says so', async () => {
    const kept = followUp({ after_second_operation: 'keep' });
    expect((await examined(rows, kept, on('2025-04-20', 'reposition'))).chosen('refractions')).toBe(3);
  });

  it('leaves nothing out where it is no second one: done before, on the same day, or of another kind', async () => {
    expect((await examined(rows, {}, on('2024-01-10', 'enhancement'))).chosen('refractions')).toBe(3);
    expect((await examined(rows, {}, on('2025-03-01', 'other'))).chosen('refractions')).toBe(3);
    expect((await examined(rows, {}, on('2025-04-20', 'other'))).chosen('refractions')).toBe(3);
  });
});
