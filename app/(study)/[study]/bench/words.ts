import type { BenchMethodId, BenchSections } from '@/lib/engine';

/** Sections of the sheet in words, in the order in which a test is made. */
export const SECTION_WORDS: readonly { readonly id: keyof BenchSections; readonly words: string }[] = [
  { id: 'cold', words: 'cold resistance' },
  { id: 'rated-load', words: 'rated-load temperature test' },
  { id: 'load', words: 'load point' },
  { id: 'dynamometer', words: 'dynamometer correction' },
  { id: 'no-load', words: 'no-load point' },
  { id: 'locked-rotor', words: 'locked rotor' },
  { id: 'rotor-removed', words: 'rotor removed' },
  { id: 'reverse-rotation', words: 'reverse rotation' },
];

export const METHOD_WORDS: readonly { readonly id: BenchMethodId; readonly words: string }[] = [
  { id: 'ieee-112-b', words: 'IEEE 112 B: dynamometer' },
  { id: 'iec-2-1-1b', words: 'IEC 60034-2-1, 2-1-1B: dynamometer' },
  { id: 'ieee-112-e', words: 'IEEE 112 E: input, stray-load loss by reverse rotation' },
  { id: 'ieee-112-e1', words: 'IEEE 112 E1: input, stray-load loss assumed' },
  { id: 'iec-2-1-1c', words: 'IEC 60034-2-1, 2-1-1C: input, stray-load loss assigned' },
  { id: 'ieee-112-f', words: 'IEEE 112 F: circuit, stray-load loss by reverse rotation' },
  { id: 'ieee-112-f1', words: 'IEEE 112 F1: circuit, stray-load loss assumed' },
  { id: 'no-load-run', words: 'No-load run: core loss and friction' },
];

export function methodWords(id: BenchMethodId): string {
  return METHOD_WORDS.find((each) => each.id === id)?.words ?? id;
}
