import { describe, expect, it } from 'vitest';
import { compose } from '../../src/page/compose.js';
import { page } from '../../src/page/page.js';
import { en } from '../../src/words/index.js';
import { internalParts, partsOf } from './parts.js';

const publication = page(compose(partsOf(), en), en);
const internal = page(compose(internalParts(), en), en);
const both = [
  ['publication', publication],
  ['internal', internal],
] as const;

const all = (text: string, pattern: RegExp): readonly string[] =>
  [...text.matchAll(pattern)].map((found) => found[1] ?? '');

// Structure by WCAG 2.2 (1.3.1, 1.4.10, 2.4.1, 2.4.2, 2.4.6, 3.1.1, 4.1.2) as far as markup shows it; what only a
// browser shows is checked in test/browser/.
describe.each(both)('the %s page', (_, text) => {
  it('names its language and title, and lets a reader skip to the results', () => {
    expect(text).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(all(text, /<title>(.*?)<\/title>/g)).toHaveLength(1);
    expect(text).toContain('<a class="skip" href="#in-short">');
  });

  it('has one header, main and footer, one heading of the first rank, and none that skips a rank', () => {
    for (const tag of ['header', 'main', 'footer', 'h1'])
      expect(all(text, new RegExp(`<(${tag})\\b`, 'g'))).toHaveLength(1);
    const ranks = all(text, /<h([1-6])\b/g).map(Number);
    ranks.forEach((rank, at) => {
      expect(rank - (ranks[at - 1] ?? 0)).toBeLessThanOrEqual(1);
    });
  });

  it('gives every id once, and every link and label an id that is there', () => {
    const ids = all(text, /\bid="([^"]+)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    const referred = [...all(text, /href="#([^"]+)"/g), ...all(text, /aria-labelledby="([^"]+)"/g)];
    expect(referred.length).toBeGreaterThan(10);
    for (const id of referred) expect(ids).toContain(id);
  });

  it('names every region that can be scrolled by keyboard', () => {
    const focusable = all(text, /<div([^>]*tabindex="0"[^>]*)>/g);
    expect(focusable.length).toBeGreaterThan(7);
    for (const attributes of focusable) {
      expect(attributes).toMatch(/role="(?:region|group)"/);
      expect(attributes).toMatch(/aria-label="[^"]+"/);
    }
  });

  it('gives every head of a table its scope', () => {
    const heads = all(text, /<th\b([^>]*)>/g);
    expect(heads.length).toBeGreaterThan(50);
    for (const attributes of heads) expect(attributes).toMatch(/scope="(?:col|row|rowgroup)"/);
  });

  it('needs no other file, and no network', () => {
    const references = [...all(text, /\b(?:src|srcset|data|poster)="([^"]+)"/g), ...all(text, /url\(([^)]+)\)/g)];
    expect(references.filter((reference) => !reference.startsWith('#'))).toEqual([]);
    expect(all(text, /(@import|<link|<iframe|<object|<img)/g)).toEqual([]);
    expect(text.includes('default-src &#39;none&#39;')).toBe(true);
  });

  it('tells once and plainly what it is not', () => {
    for (const caution of en.tables.methods.caution) expect(text.split(caution)).toHaveLength(2);
  });

  it('is the same text for the same content', () => {
    const again = page(compose(text === internal ? internalParts() : partsOf(), en), en);
    expect(again === text).toBe(true);
  });
});

describe('what the two pages differ in', () => {
  it('the one that may be sent has no script, no patient and no place of a finding', () => {
    expect(all(publication, /(<script|P0042|lane\.csv)/g)).toEqual([]);
    expect(all(publication, />(1,205)</g)).toHaveLength(1);
  });

  it('the one for the clinic lists eyes to look at again, places of findings and the lists beside it', () => {
    expect(internal).toContain(
      '<th scope="row">P0042</th><td>left</td><td>2025</td><td>prediction error −1.22 D; complication</td>',
    );
    expect(internal).toContain('<li>P0042 right: lane.csv row 88 &quot;Ax&quot; ‘195’</li>');
    expect(internal).toContain('<a href="eyes.csv">');
  });

  it('only the one for the clinic lets the reader walk from eye to eye', () => {
    expect(all(internal, /(data-walk)/g).length).toBeGreaterThan(1);
    expect(publication).not.toContain('data-walk');
    expect(publication).toContain('role="img" aria-label="What double-angle shows"');
  });
});

describe('what an export or an audit.yaml says', () => {
  it('can never become markup', () => {
    const title = '<script>alert("1")</script> & more';
    const parts = partsOf({}, { title, cohorts: { by: 'x<y', define: [], reference: undefined, compare: [] } });
    const text = page(compose(parts, en), en);
    expect(text).not.toContain('<script');
    expect(text).toContain('&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; more');
    expect(text).toContain('x&lt;y: ');
  });
});
