import { expect, it } from 'vitest';
import { judgeDelimiter, usualCells } from '../../src/intake/delimiter.js';

it.each([
  ['comma', 'id,eye,sph\n1,OD,-1.25\n2,OS,0\n'],
  ['semicolon', 'id;eye;sph\r\n1;OD;-1,25\r\n2;OS;0,50\r\n'],
  ['tab', 'id\teye\tnote\n1\tOD\ta,b;c\n'],
  ['pipe', 'id|eye|sph\r1|OD|1\r2|OS|1\r'],
] as const)('judges %s', (delimiter, text) => {
  expect(judgeDelimiter(text)).toEqual({ delimiter, separatorLine: false });
});

it('is not misled by more decimal commas than semicolons', () => {
  expect(judgeDelimiter('sph;cyl\n1,25;0,50,\n1,00;0,75,\n').delimiter).toBe('semicolon');
  expect(judgeDelimiter('a;b;c\n1,5;2,5;3,5\n1,5;2,5;3,5\n').delimiter).toBe('semicolon');
});

it('is not misled by commas in the words of a header', () => {
  expect(judgeDelimiter('Sphere, D;Cylinder, D;Axis, deg\n1;2;3\n1;2;3\n').delimiter).toBe('semicolon');
});

it('does not count what stands in quotes, line breaks included', () => {
  expect(judgeDelimiter('"a;b;c",d\n"1;\n2;3",4\n"x;y;z",5\n').delimiter).toBe('comma');
});

it('takes a line sep=; for a declaration and not for a row', () => {
  expect(judgeDelimiter('sep=;\r\na;b\r\n1;2\r\n')).toEqual({ delimiter: 'semicolon', separatorLine: true });
});

it('starts at the header, where lines stand above it', () => {
  expect(judgeDelimiter('Export of the clinic, all eyes\n\nid;eye\n1;OD\n', 2).delimiter).toBe('semicolon');
});

it('passes over the unfinished last line of a beginning', () => {
  expect(judgeDelimiter('a;b;c\n1;2;3\n4,5').delimiter).toBe('semicolon');
});

it('does not decide where there is nothing to decide by, or two fit alike', () => {
  expect(judgeDelimiter('').delimiter).toBeUndefined();
  expect(judgeDelimiter('patient\n1\n2\n').delimiter).toBeUndefined();
  expect(judgeDelimiter('a,b;c\n1,2;3\n').delimiter).toBeUndefined();
});

it('reads the header alone, where there are no rows', () => {
  expect(judgeDelimiter('a;b;c').delimiter).toBe('semicolon');
});

it('counts the cells that most rows have, those behind a last delimiter among them', () => {
  expect(usualCells('a,b\n1,2\n3,4\n', 'comma')).toBe(2);
  expect(usualCells('a;b;\n1;2;\n34;\n5;6;\n', 'semicolon')).toBe(3);
  expect(usualCells('title\na,b\n1,2,\n3,4,\n', 'comma', 2)).toBe(3);
  expect(usualCells('a,b\n"1,2",3\n', 'comma')).toBe(2);
  expect(usualCells('a,b\n', 'comma')).toBe(0);
});
