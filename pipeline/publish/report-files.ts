import { compose, type PageParts } from '../../src/page/compose.js';
import type { DrawnFigure } from '../../src/page/content.js';
import { page } from '../../src/page/page.js';
import type { Plan } from '../../src/records/plan.js';
import type { Figure } from '../../src/records/report.js';
import { bibliography } from '../../src/text/bibliography.js';
import { checklist } from '../../src/text/checklist.js';
import { legends } from '../../src/text/legends.js';
import { methods, worksCited } from '../../src/text/methods.js';
import { resultsSection } from '../../src/text/results-section.js';
import type { Words } from '../../src/words/index.js';
import { renderSvg } from '../artwork/svg.js';
import type { Say } from '../io.js';
import type { Everything } from './everything.js';
import { eyesFile } from './eyes-file.js';
import { figureFiles } from './figure-files.js';
import { findingGroups } from './finding-groups.js';
import { queriesFile, queriesOf } from './finding-lists.js';
import { flowFile } from './flow-file.js';
import { provenanceFile } from './provenance-file.js';
import { type OutputFile, textFile } from './replace.js';
import { resultsPath } from './report-folder.js';
import { resultsFile } from './results-file.js';
import { reviewEyes, reviewFile } from './review.js';
import { tableFiles } from './table-files.js';

/** All files of a report but the manifest, in the order in which they are listed, and how many eyes are for review. */
export async function reportFiles(
  all: Everything,
  plan: Plan,
  words: Words,
  say: Say,
): Promise<{ files: readonly OutputFile[]; review: number }> {
  const drawn = await drawnFigures(all.figures, { identified: false }, say);
  const identified = await drawnFigures(all.internalFigures, { identified: true }, say);
  const review = reviewEyes(all.derived, words);
  const queries = queriesOf(all, plan, words);
  const { spreadsheet } = plan.outputs;
  const lists = [
    ...eyesFile('internal/eyes.csv', all.derived, plan, say),
    queriesFile('internal/queries.csv', queries, plan),
    reviewFile('internal/review.csv', review, spreadsheet),
    flowFile('internal/flow.csv', all.raw, all.tables, all.results, spreadsheet),
  ];
  const methodsText = methods(all.shared, plan, words);
  const shared = {
    plan,
    results: all.shared,
    typeset: all.typeset,
    methods: methodsText,
    figures: drawn,
    findings: findingGroups(all, plan, words, { places: false }),
    internal: undefined,
  };
  const inside = {
    plan,
    results: all.results,
    typeset: all.internalTypeset,
    methods: methods(all.results, plan, words),
    figures: identified,
    findings: findingGroups(all, plan, words, { places: true }),
    internal: { review, files: lists.map(({ path }) => listEntry(path, words)) },
  };
  const files = [
    pageFile('publication/index.html', shared, words),
    ...(await tableFiles(all.typeset, plan, words)),
    ...(await figureFiles(drawn, plan.outputs.figures, say)),
    textFile('publication/methods.md', methodsText),
    textFile('publication/legends.md', legends(all.typeset, all.figures, words)),
    textFile('publication/results.md', resultsSection(all.shared, plan, words)),
    textFile('publication/references.bib', bibliography(worksCited(all.shared, plan, words), words)),
    textFile('publication/checklist.md', checklist(all.typeset, all.figures, words)),
    provenanceFile('publication/provenance.csv', all.typeset, all.figures, words),
    resultsFile(resultsPath, all.shared.rows),
    pageFile('internal/index.html', inside, words),
    ...lists,
    textFile('internal/audit.yaml', all.audit),
  ];
  return { files, review: review.length };
}

function pageFile(path: string, parts: PageParts, words: Words): OutputFile {
  return textFile(path, page(compose(parts, words), words));
}

function listEntry(path: string, { page: { lists } }: Words): { file: string; holds: string } {
  const file = path.slice(path.lastIndexOf('/') + 1);
  return { file, holds: lists[file] ?? '' };
}

async function drawnFigures(
  figures: readonly Figure[],
  options: { identified: boolean },
  say: Say,
): Promise<readonly DrawnFigure[]> {
  const drawn: DrawnFigure[] = [];
  for (const [done, figure] of figures.entries()) {
    say('draw', done, figures.length);
    drawn.push({ figure, svg: await renderSvg(figure, options) });
  }
  return drawn;
}
