/** What kind of thing is in doubt; tests and programs go by it. */
export type DoubtKind =
  | 'by cells'
  | 'part of header'
  | 'header against cells'
  | 'some cells unlike'
  | 'choice taken'
  | 'choice open'
  | 'unknown words'
  | 'rare words'
  | 'mixed signs'
  | 'shifted row'
  | 'blank lens cylinder'
  | 'assumed visit'
  | 'open visit'
  | 'open eye'
  | 'assumed operations'
  | 'scale unknown'
  | 'decimal mark'
  | 'codes'
  | 'visit labels'
  | 'outcome'
  | 'rare year'
  | 'like';

/** A doubt, as it stands in audit.yaml and, cut short, on the screen. */
export interface Doubt {
  kind: DoubtKind;
  text: string;
  /** The column it is about; '' where it is about a file, or all of them. */
  header: string;
}

export function doubt(kind: DoubtKind, text: string, header = ''): Doubt {
  return { kind, text, header };
}
