/** Where an item of the guideline is answered: texts of the report, or tables and figures by name. */
export interface ChecklistItem {
  item: string;
  asks: string;
  /** Files of texts; 'page' is index.html. */
  texts: readonly string[];
  exhibits: readonly string[];
  /** What the authors still have to write; '' nothing. */
  author: string;
}

const item = (
  number: string,
  asks: string,
  author: string,
  { texts = [], exhibits = [] }: { texts?: readonly string[]; exhibits?: readonly string[] } = {},
): ChecklistItem => ({ item: number, asks, texts, exhibits, author });

const outcomes = ['refractive-accuracy', 'residual-cylinder', 'visual-acuity', 'acuity-change', 'safety'];

/** English words: the reporting guideline for observational studies, its items in our words. */
export const checklist = {
  heading: 'Reporting checklist',
  about:
    'The items of the STROBE statement for cohort studies, in short (von Elm E et al. PLoS Med 2007;4:e296, from memory: check against the statement itself before submission). “Answered by” names what this report holds; the last column is what only the authors can write.',
  head: ['Item', 'Asks for', 'Answered by', 'For the authors'],
  none: '–',
  items: [
    item('1', 'Design in the title or abstract; a balanced summary', 'title and abstract; results.md has the numbers', {
      texts: ['results.md'],
    }),
    item('2', 'Scientific background and rationale', 'why the audit was made'),
    item('3', 'Objectives and hypotheses', 'the questions, and which were set before the data were seen'),
    item('4', 'Key elements of the design', 'that it is a cohort of routine operations, and how it was planned'),
    item('5', 'Setting, places and dates', 'the clinic and its patients; the period stands in the report', {
      texts: ['page', 'methods.md'],
    }),
    item('6', 'Who was eligible, where from, how followed up', 'how patients came to the clinic', {
      texts: ['methods.md'],
      exhibits: ['eye-flow', 'follow-up'],
    }),
    item('7', 'Definitions of outcomes, exposures, confounders', '', { texts: ['methods.md', 'legends.md'] }),
    item('8', 'Sources of data and how things were measured', 'instruments, charts and who examined', {
      texts: ['methods.md'],
    }),
    item('9', 'What was done about bias', 'why eyes came to one cohort or the other', {
      exhibits: ['confounding', 'sensitivity', 'follow-up'],
    }),
    item('10', 'How the size was arrived at', 'whether the number of eyes was planned'),
    item('11', 'How quantities were grouped', 'why these groups', {
      texts: ['methods.md'],
      exhibits: ['accuracy-by-subgroup'],
    }),
    item('12a', 'All statistical methods', '', { texts: ['methods.md', 'references.bib'] }),
    item('12b', 'Subgroups and interactions', 'which subgroups were set before', { texts: ['methods.md'] }),
    item('12c', 'Missing data', 'why values are missing', { texts: ['methods.md'], exhibits: ['eye-flow'] }),
    item('12d', 'Loss to follow-up', 'why patients did not return', { texts: ['methods.md'], exhibits: ['follow-up'] }),
    item('12e', 'Sensitivity analyses', '', { exhibits: ['sensitivity'] }),
    item('13a–c', 'Numbers at each stage, reasons, a flow diagram', '', { exhibits: ['eye-flow'] }),
    item('14a', 'Characteristics of patients and eyes', '', { exhibits: ['baseline'] }),
    item('14b', 'Missing values of each variable', '', { exhibits: ['baseline', ...outcomes] }),
    item('14c', 'Follow-up time', '', { exhibits: ['follow-up', ...outcomes] }),
    item('15', 'Numbers of outcomes', '', { exhibits: outcomes }),
    item('16a', 'Estimates, unadjusted and adjusted, with intervals', 'which confounders were adjusted for, and why', {
      exhibits: [...outcomes, 'comparison', 'differences'],
    }),
    item('16b', 'Boundaries of categories', '', { texts: ['legends.md'], exhibits: ['accuracy-by-subgroup'] }),
    item('16c', 'Absolute beside relative risks', '', { exhibits: ['comparison'] }),
    item('17', 'Other analyses', '', { exhibits: ['accuracy-by-subgroup', 'formulas', 'sensitivity'] }),
    item('18', 'Key results with reference to the objectives', 'the summary; results.md has the numbers', {
      texts: ['results.md', 'page'],
    }),
    item('19', 'Limitations', 'the limits of this audit; the report’s cautions are a start', { texts: ['page'] }),
    item('20', 'A cautious interpretation', 'the interpretation', { exhibits: ['benchmarks'] }),
    item('21', 'Generalisability', 'to whom the results apply'),
    item('22', 'Funding, and the role of the funders', 'funding, interests, ethics approval'),
  ] as readonly ChecklistItem[],
};
