import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

const FAMILIES = [
  {
    of: '@expo-google-fonts/atkinson-hyperlegible-next',
    file: 'AtkinsonHyperlegibleNext',
    faces: ['400Regular', '400Regular_Italic', '600SemiBold', '700Bold'],
  },
  {
    of: '@expo-google-fonts/noto-sans-arabic',
    file: 'NotoSansArabic',
    faces: ['400Regular', '600SemiBold', '700Bold'],
  },
  {
    of: '@expo-google-fonts/noto-sans-devanagari',
    file: 'NotoSansDevanagari',
    faces: ['400Regular', '600SemiBold', '700Bold'],
  },
] as const;

/** Font files shipped with the product: the paper looks the same on every machine, in every script it is written in. */
export const fontFiles = (): readonly string[] =>
  FAMILIES.flatMap(({ of, file, faces }) => faces.map((face) => require.resolve(`${of}/${face}/${file}_${face}.ttf`)));
