import type { SheetTexts } from '../sheet-texts.ts';

/** Tags that hang at the joint, and labels. */
export const tags: SheetTexts['tags'] = {
  title: 'जॉइंट टैग',
  studs: '{count} × {thread}',
  seenFrom: '{side} से देखने पर',
  bolt1: 'बोल्ट 1: {place}',
  notFinal: 'अंतिम क्लोज़िंग नहीं: {purpose}',
  stop: 'इस टैग से न ढीला करें, न कसें: जॉइंट की अभी की स्थिति के लिए स्कैन करें।',
  stub: 'हर स्टब अपना कदम पूरा होने पर फाड़ा जाता है और चार्जहैंड को जाता है',
  stubName: 'नाम',
  stubTime: 'तारीख, समय',
  steps: {
    open: 'खुला',
    'faces-accepted': 'फेस स्वीकृत',
    'nipped-up': 'निप-अप हुआ',
    tight: 'कसा गया',
    checked: 'जाँचा गया',
  },
};
