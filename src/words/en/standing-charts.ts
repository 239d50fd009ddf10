/** English words: charts of how the audit stands over time, and beside others. */
export const standingCharts = {
  share: 'Eyes, %',
  funnel: {
    title: (name: string) => `${name}: operators and sites by number of eyes`,
    axis: 'Eyes',
    foot: 'Lines: exact 95 % limits; broken: 99.8 %. Case mix is not adjusted.',
    legend: (name: string, target: string, declared: boolean, operators: string) =>
      `${name}: each mark is one of ${operators} operators or sites. The level line is ${declared ? 'the declared standard' : 'the share of all eyes'}, ${target} %; around it lie exact binomial limits, at the eyes divided by one design effect for fellow eyes, between which 95 % (full lines) and 99.8 % (broken lines) of operators would lie by chance alone. Case mix is not adjusted: an operator outside may have other patients. Operators with few eyes are not drawn.`,
    altLead: 'Funnel plot. ',
    inside: 'inside the limits',
    beyond: (level: string) => `outside the ${level} % limits`,
  },
  monitoring: {
    title: (name: string) => `${name}, over the series of operations`,
    axis: 'Eyes with outcome, in the order of surgery',
    sumAxis: 'Cumulative sum',
    running: (eyes: string) => `share of the last 50 eyes (${eyes})`,
    sum: (signals: string) => `cumulative sum, ${signals}`,
    signals: (number: number, at: string) =>
      number === 0 ? 'no signal' : number === 1 ? `1 signal, at eye ${at}` : `${number} signals, at eyes ${at}`,
    foot: 'Eyes without outcome are passed over. Case mix is not adjusted.',
    legend: (name: string, level: string) =>
      `${name}: share of the last 50 eyes with its own ${level} confidence interval, patients with two eyes accounted for. Neighbouring points share most of their eyes.`,
    noSum: 'No signal is looked for: audit.yaml declares no acceptable and unacceptable share (monitoring).',
    sumInternal:
      'The cumulative sum tells what became of each eye, one after the other: it stands in the internal report alone.',
    sumLegend: (alarm: string) =>
      `Broken line: the acceptable share. Cumulative sum of log likelihood ratios of the unacceptable against the acceptable share; its limit (broken line) is simulated, seeded, for this number of eyes, these fellow eyes and their correlation, so that a series at the acceptable share passes it at all with at most ${alarm} % probability, each series by itself. Only worsening is looked for; behind a signal the sum starts again.`,
    altLead: 'Running shares. ',
    altShare: (first: string, last: string) => `from ${first} % of the first 50 eyes to ${last} % of the last 50`,
  },
} as const;
