/** English words: how the audit stands over time, and beside others. */
export const standing = {
  titles: {
    stability: (visits: string) => `Refraction over visits: ${visits}, spectacle plane (eligible eyes)`,
    benchmarks: (visit: string) => `This audit at ${visit} beside published figures and its former report`,
  },
  blocks: {
    spherical_equivalent: 'Spherical equivalent, D',
    refractive_cylinder_recorded: 'Cylinder as recorded, D',
    all: (what: string) => `${what}, all eyes that came`,
    same: (what: string) => `${what}, the same eyes at every visit`,
    change: (what: string, before: string, after: string) => `${what}, change from ${before} to ${after}`,
    published: 'Published figures, this audit under their definition',
    former: 'Former report, a second sample',
  },
  rows: {
    at: (visit: string, what: string) => `${visit}: ${what}`,
    beyond: 'Changed by more than 0.50 D, n/N, %',
    within: (limit: string) => `within ±${limit} D`,
    orBetter: (line: string) => `corrected acuity ${line} or better`,
  },
  lineOrBetter: (line: string) => `${line} or better`,
  statistics: { mean: 'mean', geometric_mean: 'typical' } as Readonly<Record<string, string>>,
  heads: {
    figure: 'Figure',
    beside: 'Published, %, or former',
    audit: 'This audit, n/N, %',
    difference: 'Difference',
    verdict: 'This audit is',
  },
  verdicts: {
    above: 'above it',
    below: 'below it',
    higher: 'higher',
    lower: 'lower',
    'not-distinguishable': 'not distinguishable from it',
  },
  warnings: {
    noFormer: (folder: string) =>
      `audit.yaml names a former report (${folder}) in which no results could be found to compare with.`,
  },
  notes: {
    beyond: 'A change of exactly 0.50 D does not count; eyes with both visits.',
    visits: (list: string) => `Visits: ${list}.`,
    window: (name: string, from: string, to: string) => `${name}, ${from} to ${to} days`,
    sameEyes:
      'Eyes that came to every visit show what changed in an eye; means of all that came also change with who came.',
    definition:
      'Each figure is set beside this audit counted by the figure’s own definition: against prediction or target, with its acuity floor; where it has days, of eyes whose outcome visit fell into them, which may be few and unlike the others. Case mix differs and is not adjusted.',
    line: 'A published figure is a fixed line: this audit is above or below it only where its whole interval is.',
    source: (id: string, source: string, remark: string) => `${id}: ${source}; ${remark}.`,
    eyes: (eyes: string, of: string) => `${eyes} of ${of} eyes`,
    former:
      'The former report is a second sample and no fixed line: the interval of the difference holds the uncertainty of both years, patients with two eyes accounted for in each.',
  },
} as const;
