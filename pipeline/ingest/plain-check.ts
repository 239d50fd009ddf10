/** A row of an export holds less than this; a longer one is a quotation mark that nobody closed, or no table. */
export const longestRecord = 1 << 20;

/** Looks at the bytes of a file as they pass, for what keeps them from being split by bytes alone. */
export interface PlainCheck {
  push(piece: Uint8Array): void;
  isPlain(): boolean;
}

const [nul, lineFeed, carriageReturn, quotationMark] = [0, 10, 13, 34];

/** Starts to look: plain is a file without quotation mark and NUL, whose lines end with LF or CRLF and are no longer than rows. */
export function plainCheck(): PlainCheck {
  let isPlain = true;
  let lineBytes = 0;
  let endsWithReturn = false;

  function lines(piece: Uint8Array): void {
    let at = 0;
    for (let end = piece.indexOf(lineFeed); end >= 0; end = piece.indexOf(lineFeed, at)) {
      if (lineBytes + end - at >= longestRecord) isPlain = false;
      lineBytes = 0;
      at = end + 1;
    }
    lineBytes += piece.length - at;
  }

  function returns(piece: Uint8Array): void {
    if (endsWithReturn && piece[0] !== lineFeed) isPlain = false;
    for (let at = piece.indexOf(carriageReturn); at >= 0; at = piece.indexOf(carriageReturn, at + 1)) {
      if (at + 1 < piece.length && piece[at + 1] !== lineFeed) isPlain = false;
    }
    endsWithReturn = piece.at(-1) === carriageReturn;
  }

  return {
    push(piece) {
      if (!isPlain || piece.length === 0) return;
      if (piece.includes(quotationMark) || piece.includes(nul)) isPlain = false;
      lines(piece);
      returns(piece);
    },
    isPlain: () => isPlain && !endsWithReturn && lineBytes < longestRecord,
  };
}
