/** English words: the report page. */
export const page = {
  kicker: 'Cataract surgery outcomes audit',
  kickerInternal: 'Cataract surgery outcomes audit · with single eyes: stays in the clinic',
  internalMark: 'stays in the clinic',
  skip: 'Skip to the results',
  contents: 'Questions of this report',
  inShort: 'In short',
  care: 'Read with care',
  methods: 'How were these numbers made?',
  figure: (number: number) => `Figure ${number}`,
  table: (number: number) => `Table ${number}`,
  walk: 'Arrow keys walk from eye to eye.',

  severities: {
    'set aside': 'Set aside: impossible values, treated as missing',
    query: 'To confirm: unusual values, kept',
    note: 'Noted',
  },

  review: {
    title: 'Which eyes should be looked at again?',
    caption: 'Eyes to look at again, by patient',
    head: ['Patient', 'Eye', 'Year', 'Reason'],
    answer: (count: number) =>
      count === 0
        ? 'No eye meets a reason for review.'
        : count === 1
          ? 'One eye meets a reason for review. The reason is a question, not a verdict.'
          : `${count} eyes meet a reason for review. A reason is a question, not a verdict.`,
    files: 'The whole lists',
  },
};
