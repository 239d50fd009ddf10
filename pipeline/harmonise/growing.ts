/** A column of numbers whose length is not known before it is filled. */
export interface Growing<A> {
  push(value: number): void;
  /** The numbers so far, in an array of their own. */
  finish(): A;
}

type NumberArray<A> = {
  length: number;
  [index: number]: number;
  set(from: A): void;
  slice(from: number, to: number): A;
};

/**
 * Starts a column. Typed from the first number on: a registry's millions neither move nor change their form.
 *
 * @param make  an array of a given length
 */
function growing<A extends NumberArray<A>>(make: (length: number) => A): Growing<A> {
  let values = make(1024);
  let length = 0;
  return {
    push(value) {
      if (length === values.length) {
        const wider = make(2 * length);
        wider.set(values);
        values = wider;
      }
      values[length] = value;
      length += 1;
    },
    finish: () => values.slice(0, length),
  };
}

export const integers = (): Growing<Int32Array> => growing((length) => new Int32Array(length));
export const bytes = (): Growing<Uint8Array> => growing((length) => new Uint8Array(length));
export const numbers = (): Growing<Float64Array> => growing((length) => new Float64Array(length));
