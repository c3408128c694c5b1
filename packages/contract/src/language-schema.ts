import { z } from 'zod';
import { LANGUAGES } from './languages.ts';

// Apart from the list itself: every first page speaks a language, and none of them needs the library of schemas.
export const language = z.enum(LANGUAGES);
