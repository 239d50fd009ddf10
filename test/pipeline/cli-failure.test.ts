import { describe, expect, it } from 'vitest';
import { failureReply } from '../../pipeline/commands/failure.js';
import { Interrupted } from '../../pipeline/commands/interrupt.js';
import { emphasised, progressOn } from '../../pipeline/terminal.js';

/** A terminal that keeps what is written to it. */
function terminal(more: { isTTY: boolean; columns: number }): { stream: NodeJS.WriteStream; written: string[] } {
  const written: string[] = [];
  const stream = { ...more, write: (text: string) => written.push(text) > 0 } as unknown as NodeJS.WriteStream;
  return { stream, written };
}

describe('a mistake of ours', () => {
  function failing(): Error {
    return new RangeError('share: patient P0042 gives -10.25; expected 0 to 1');
  }

  it('ends with 3 and says where it happened, without a value and without a folder', () => {
    const { code, screen, data } = failureReply(failing());
    expect(code).toBe(3);
    expect(screen).toContain('RangeError');
    expect(screen).toMatch(/at failing cli-failure\.test\.ts:\d+:\d+/);
    expect(screen).toContain('Please report these lines.');
    for (const secret of ['P0042', '10.25', '/test/', 'node:']) {
      expect(screen).not.toContain(secret);
      expect(JSON.stringify(data)).not.toContain(secret);
    }
  });

  it('is one too where something is thrown that is no error', () => {
    expect(failureReply('P0042').code).toBe(3);
    expect(failureReply('P0042').screen).not.toContain('P0042');
  });

  it('is none where the disk is full or the reader interrupted', () => {
    expect(failureReply(Object.assign(new Error('x'), { code: 'ENOSPC' }))).toMatchObject({
      code: 2,
      screen: expect.stringContaining('the disk is full'),
    });
    expect(failureReply(new Interrupted()).code).toBe(130);
  });

  it('is one where a package fails with a code of its own', () => {
    expect(failureReply(Object.assign(new Error('x'), { code: 'ERR_MODULE_NOT_FOUND' })).code).toBe(3);
  });
});

describe('progress', () => {
  it('is drawn on one line of a terminal, cut to its width, and cleared', () => {
    const { stream, written } = terminal({ isTTY: true, columns: 12 });
    const { say, clear } = progressOn(stream, { ingest: 'reading' });
    say('harmonise', 1, 4);
    clear();
    expect(written).toEqual(['\r\u001b[K  harmonise', '\r\u001b[K']);
  });

  it('shows each stage when it begins, and within one no more often than can be seen', () => {
    const { stream, written } = terminal({ isTTY: true, columns: 78 });
    const { say } = progressOn(stream, { ingest: 'reading' });
    for (let done = 0; done < 1000; done++) say('ingest', done, 1000);
    say('harmonise', 0, 1);
    say('publish', 3, 4);
    expect(written.length).toBeLessThan(100);
    expect(written[0]).toBe('\r\u001b[K  reading  0 %');
    expect(written.slice(-2)).toEqual(['\r\u001b[K  harmonise', '\r\u001b[K  publish  75 %']);
  });

  it.each([
    ['a file', { isTTY: false, columns: 78 }],
    ['a terminal without a width', { isTTY: true, columns: 0 }],
  ])('is silent on %s', (_, kind) => {
    const { stream, written } = terminal(kind);
    const { say, clear } = progressOn(stream, { ingest: 'reading' });
    say('ingest', 1, 2);
    clear();
    expect(written).toEqual([]);
  });
});

describe('emphasis', () => {
  const text = 'Title\n\n  body\n\nNext   halfdiopter check audit.yaml\n';

  it('is for terminals alone', () => {
    const shown = emphasised(text, terminal({ isTTY: true, columns: 78 }).stream, { TERM: 'xterm' });
    expect(shown).not.toBe(text);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape codes are what is looked for
    expect(shown.replace(/\u001b\[\d+m/g, '')).toBe(text);
    expect(emphasised(text, terminal({ isTTY: false, columns: 78 }).stream, { TERM: 'xterm' })).toBe(text);
  });

  it.each([{ TERM: 'xterm', NO_COLOR: '1' }, { TERM: 'dumb' }])('is left out by %o', (environment) => {
    expect(emphasised(text, terminal({ isTTY: true, columns: 78 }).stream, environment)).toBe(text);
  });
});
