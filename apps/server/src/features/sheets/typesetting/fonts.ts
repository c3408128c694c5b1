import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const FACES = ['400Regular', '400Regular_Italic', '600SemiBold', '700Bold'];
const FONT_PACKAGE = '@expo-google-fonts/atkinson-hyperlegible-next';

/** Font files shipped with the product: the paper looks the same on every machine. */
export const fontFiles = (): readonly string[] =>
  FACES.map((face) => require.resolve(`${FONT_PACKAGE}/${face}/AtkinsonHyperlegibleNext_${face}.ttf`));
