import { describe, expect, it } from 'vitest';
import { accents, ink } from '../../src/charts/theme.js';
import { escaped } from '../../src/format/markup.js';
import { drawingMarkup } from '../../src/page/drawing.js';
import { html, prose } from '../../src/page/html.js';
import { markdownMarkup } from '../../src/page/markdown.js';
import { stripMarkup } from '../../src/page/strip.js';
import { style } from '../../src/page/style.js';
import { markdownText } from '../../src/tables/render/markdown.js';

describe('html', () => {
  // HTML Living Standard, 13.1.2.3 and 13.3: what may not stand in text and in quoted attributes.
  it('escapes text, and leaves markup as it is', () => {
    expect(escaped(`<a href="x">'&'</a>`)).toBe('&lt;a href=&quot;x&quot;&gt;&#39;&amp;&#39;&lt;/a&gt;');
    const inner = html`<b>${'1 < 2'}</b>`;
    expect(html`<p>${inner}${[inner, inner]}${undefined}${3}</p>`.markup).toBe(
      '<p><b>1 &lt; 2</b><b>1 &lt; 2</b><b>1 &lt; 2</b>3</p>',
    );
  });

  it('keeps a number and its unit on one line', () => {
    expect(prose('63.3 % of 5 Days within 0.50 D')).toBe('63.3\u00a0% of 5 Days within 0.50\u00a0D');
  });
});

describe('markdown', () => {
  it('reads what our own texts write, signs that were escaped included', () => {
    const text = `# Methods\n\n${markdownText('Eyes < 5 [1], a_b*c #2')}\n\n## References\n\n1. First\n2. Second\n`;
    expect(markdownMarkup(text).markup).toBe(
      '<p>Eyes &lt; 5 [1], a_b*c #2</p>\n<h3>References</h3>\n<ol class="works">\n<li>First</li>\n<li>Second</li>\n</ol>\n',
    );
  });
});

describe('the strip below a number', () => {
  const marks = [{ at: 0, label: '0' }];
  const numbersOf = (text: string, pattern: RegExp) => pattern.exec(text)?.slice(1).map(Number);
  const band = /class="band" x="([\d.]+)" y="3" width="([\d.]+)"/;

  // By hand: on a scale from −0.5 to 0.5, −0.1 lies at 40 %, −0.06 at 44 %, 0 at 50 %; the interval is 10 % wide.
  it('places estimate, interval and marks on its scale', () => {
    const { markup } = stripMarkup({ from: -0.5, to: 0.5, low: -0.1, high: 0, value: -0.06, marks });
    expect(numbersOf(markup, band)).toEqual([40, 10]);
    expect(numbersOf(markup, /class="value" x1="([\d.]+)" x2="([\d.]+)"/)).toEqual([44, 44]);
    expect(numbersOf(markup, /class="mark" x1="([\d.]+)"/)).toEqual([50]);
  });

  it('ends where the scale ends, and has no band without an interval', () => {
    const beyond = stripMarkup({ from: 0, to: 1, low: -0.2, high: 1.2, value: 0.5, marks }).markup;
    expect(numbersOf(beyond, band)).toEqual([0, 100]);
    expect(stripMarkup({ from: 0, to: 1, low: undefined, high: undefined, value: 0.5, marks }).markup).not.toContain(
      'band',
    );
  });
});

describe('a drawing', () => {
  it('is named, and sized by the style sheet from its width in print', () => {
    const { markup } = drawingMarkup(
      '<?xml version="1.0"?><svg width="238.1" height="9" viewBox="0 0 1 1" class="m"><g/></svg>',
      html`role="img"`,
    );
    expect(markup).toBe('<svg viewBox="0 0 1 1" style="--w:238.1" role="img"><g/></svg>');
  });

  it('without a width is refused', () => {
    expect(() => drawingMarkup('<svg><g/></svg>', html``)).toThrow(
      /drawingMarkup: <svg>.*expected an svg element with a width/,
    );
  });
});

describe('colours', () => {
  // WCAG 2.2, 1.4.3 and 1.4.11: 4.5:1 for text, 3:1 for marks; relative luminance as defined there.
  const luminance = (hex: string): number => {
    const parts = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
    const [r = 0, g = 0, b = 0] = parts.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a: string, b: string): number => {
    const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (light + 0.05) / (dark + 0.05);
  };
  const [light, dark] = [...style.matchAll(/:root \{([^}]*)\}/g)].map(([, body = '']) =>
    Object.fromEntries([...body.matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map(([, name, value]) => [name, value])),
  );

  it.each([
    ['light', light],
    ['dark', dark],
  ])('text and marks stand out from their ground: %s', (_, colours) => {
    const of = (name: string): string => colours?.[name] ?? 'absent';
    for (const text of ['ink', 'soft', 'accent']) {
      for (const ground of ['paper', 'wash']) {
        expect(contrast(of(text), of(ground)), `${text} on ${ground}`).toBeGreaterThan(4.5);
      }
    }
    expect(contrast(of('accent'), of('accent-wash'))).toBeGreaterThan(3);
  });

  it('are those of the charts, whose paper stays white in the dark', () => {
    expect(light).toMatchObject({ ink: ink.full, accent: accents[0]?.colour, figure: ink.paper });
    expect(dark?.figure).toBe('#ffffff');
  });

  it('knows contrast: black on white is 21:1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  });
});
