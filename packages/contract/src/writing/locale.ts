/**
 * The locale that numbers and dates are written by in a language of ours. Digits are always those that stand on
 * wrenches and gauges; English without a country means the day before the month, as sites outside the United States
 * write it.
 */
export const localeOf = (language: string): string => (language === 'en' ? 'en-GB' : `${language}-u-nu-latn`);
