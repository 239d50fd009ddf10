// Counts of a test run as the runner's JSON report gives them; a run without a report counts as one failure.
import { readFileSync } from 'node:fs';

/** Passed and failed tests; a test file that could not even start has no test to fail and counts itself. */
function countsOf(path) {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(path, 'utf8'));
    const broken = testResults.filter(
      ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
    );
    return [numPassedTests, numFailedTests + broken.length];
  } catch {
    return [0, 1];
  }
}

const [passed, failed] = countsOf(process.argv[2]);
console.log(`${passed} ${failed}`);
