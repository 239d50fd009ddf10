import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const executablePath = '/usr/bin/chromium';

/**
 * Whether there is a browser to look at the pages with. Checks are skipped with a printed reason where there is none;
 * on the build server its absence is a failure.
 */
export const browserPresent = existsSync(executablePath);

if (!browserPresent) {
  const reason = `${executablePath} is not installed: what only a browser shows is not checked`;
  if (process.env.CI) throw new Error(reason);
  console.warn(reason);
}

export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath, args: ['--no-sandbox'] });
}
