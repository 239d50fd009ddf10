/** A published figure with the definition that it stands on, as data. */
export interface Benchmark {
  /** Name in audit.yaml and in results.csv. */
  id: string;
  /** Citation in a few words. */
  source: string;
  /** What it counts. */
  measure: 'prediction_error' | 'target_error' | 'cdva';
  statistic: string;
  /** The published share, and its counts where they are printed. */
  value: number;
  counts?: readonly [eyes: number, of: number];
  /** Eyes that the figure rests on; of a standard those of the last audit behind it. */
  eyes: number;
  /** Least corrected acuity after surgery, where the source leaves other eyes out. */
  acuityFloor?: string;
  /** Days after surgery that the source counts, where it says so. */
  days?: readonly [from: number, to: number];
  /** How its eyes differ, in the words of a footnote. */
  remark: string;
}

const registry2018 = {
  source: 'Lundström et al. 2018, J Cataract Refract Surg 44:447-452',
  measure: 'target_error',
  days: [7, 60],
  remark: 'European registry, target refraction; outcome reported for 51.6 % of the operations',
} as const;
const glasgow = {
  source: 'Brogan et al. 2019, Br J Ophthalmol 103:539',
  measure: 'target_error',
  acuityFloor: '20/40',
  remark: 'one hospital trust, target refraction, corrected acuity 6/12 or better, about four weeks',
} as const;
const standard2009 = {
  source: 'Gale et al. 2009, Eye 23:149-152',
  measure: 'prediction_error',
  acuityFloor: '20/40',
  eyes: 1448,
  remark: 'a standard proposed for one country, predicted refraction, corrected acuity 6/12 or better, four weeks',
} as const;
const sweden2008 = {
  source: 'Swedish National Cataract Register 2008, J Cataract Refract Surg 34:1935-1939',
  measure: 'target_error',
  remark: 'national registry 2000-2005, target refraction',
} as const;
const acuity2013 = {
  source: 'Lundström et al. 2013, J Cataract Refract Surg 39:673-679',
  measure: 'cdva',
  eyes: 368256,
  remark: 'European registry, eyes with comorbidity included',
} as const;

/** Every published figure that audits are set beside, in the order of the table. */
export const publishedBenchmarks: readonly Benchmark[] = [
  { ...standard2009, id: 'gale-2009-0.50', statistic: 'share_within_0.50', value: 0.55 },
  { ...standard2009, id: 'gale-2009-1.00', statistic: 'share_within_1.00', value: 0.85 },
  {
    ...glasgow,
    id: 'brogan-2019-0.50',
    statistic: 'share_within_0.50',
    value: 5577 / 8943,
    counts: [5577, 8943],
    eyes: 8943,
  },
  {
    ...glasgow,
    id: 'brogan-2019-1.00',
    statistic: 'share_within_1.00',
    value: 7938 / 8943,
    counts: [7938, 8943],
    eyes: 8943,
  },
  {
    ...registry2018,
    id: 'lundstrom-2018-0.50',
    statistic: 'share_within_0.50',
    value: 205675 / 282811,
    counts: [205675, 282811],
    eyes: 282811,
  },
  {
    ...registry2018,
    id: 'lundstrom-2018-1.00',
    statistic: 'share_within_1.00',
    value: 263015 / 282811,
    counts: [263015, 282811],
    eyes: 282811,
  },
  {
    ...sweden2008,
    id: 'sweden-2008-0.50',
    statistic: 'share_within_0.50',
    value: 13580 / 23244,
    counts: [13580, 23244],
    eyes: 23244,
  },
  {
    ...sweden2008,
    id: 'sweden-2008-1.00',
    statistic: 'share_within_1.00',
    value: 19489 / 23244,
    counts: [19489, 23244],
    eyes: 23244,
  },
  {
    id: 'zijlmans-2021-20/40',
    source: 'Zijlmans et al. 2021, cohort of a standard outcome set',
    measure: 'cdva',
    statistic: 'share_at_or_better_20/40',
    value: 2505 / 2823,
    counts: [2505, 2823],
    eyes: 2823,
    remark: 'corrected acuity 0.3 logMAR or better at three months',
  },
  { ...acuity2013, id: 'lundstrom-2013-20/40', statistic: 'share_at_or_better_20/40', value: 0.943 },
  { ...acuity2013, id: 'lundstrom-2013-20/20', statistic: 'share_at_or_better_20/20', value: 0.613 },
];

/** The figures that audit.yaml asks for. */
export function chosenBenchmarks(published: 'all' | 'none' | readonly string[]): readonly Benchmark[] {
  if (published === 'all') return publishedBenchmarks;
  return publishedBenchmarks.filter(({ id }) => published !== 'none' && published.includes(id));
}
