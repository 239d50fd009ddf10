// Which eyes a monitored share stands on, and in which order; numbers by hand.
import { describe, expect, it } from 'vitest';
import { auditOfEyes, type MadeEye, singles } from '../comparison/made-up-audit.js';

const watched = (measure: string): string =>
  `monitoring: { outcome: ${measure}/share_within_0.50, acceptable: 0.7, unacceptable: 0.5 }`;
const series = (measure: string): string => `monitoring:${measure}/share_within_0.50`;

describe('a monitored share of the centred error', () => {
  // 25 eyes at 0.495 and 25 at −0.495: less the mean of all they are within 0.50; less the mean of the other 49 each is
  // 0.495 · 50/49 = 0.505 away, and none is.
  it('stands on errors centred without the eye’s own patient, as the share of the table does', async () => {
    const errors = Array.from({ length: 50 }, (_, i) => (i % 2 === 0 ? 0.495 : -0.495));
    const { results } = await auditOfEyes(singles('A', errors, 100), watched('prediction_error_centred'));
    expect(results.get('prediction_error_centred', 'all', 'share_within_0.50')).toMatchObject({ value: 0, n: 50 });
    const running = results.get(series('prediction_error_centred'), 'all', 'share_running_to_50');
    expect(running).toMatchObject({ value: 0, n: 50 });
  });
});

describe('the order of a monitored series', () => {
  it('is that of the days of surgery, whatever that of the file', async () => {
    // The first 50 operations succeed, in January; the next 50 fail, in February; the file has the last first.
    const eyes = Array.from({ length: 100 }, (_, i): MadeEye => {
      const day = String(1 + (i % 25)).padStart(2, '0');
      const [month, seen, error] = i < 50 ? ['01', '2025-02-25', 0] : ['02', '2025-03-28', 2];
      return { patient: `P${900 - i}`, side: 'R', technique: 'A', day: `2025-${month}-${day}`, examined: seen, error };
    });
    const { results } = await auditOfEyes(eyes.toReversed(), watched('prediction_error'));
    const at = (place: number) => results.get(series('prediction_error'), 'all', `share_running_to_${place}`).value;
    expect([at(50), at(51), at(100)]).toEqual([1, 0.98, 0]);
  });

  it('is on one day that of the one-eye rule: right eyes first', async () => {
    const eyes = Array.from({ length: 100 }, (_, i): MadeEye => {
      const side = i % 2 === 0 ? 'L' : 'R';
      return { patient: `P${100 + Math.floor(i / 2)}`, side, technique: 'A', error: side === 'R' ? 0 : 2 };
    });
    const { results } = await auditOfEyes(eyes, watched('prediction_error'));
    const at = (place: number) => results.get(series('prediction_error'), 'all', `share_running_to_${place}`).value;
    expect([at(50), at(100)]).toEqual([1, 0]);
  });
});
