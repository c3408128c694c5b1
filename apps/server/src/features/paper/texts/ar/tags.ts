import type { SheetTexts } from '../sheet-texts.ts';

/** Tags that hang at the joint, and labels. */
export const tags = {
  title: 'بطاقات الوصلات',
  studs: '{count} × {thread}',
  seenFrom: 'كما تُرى من {side}',
  bolt1: 'البرغي 1: {place}',
  notFinal: 'ليس الإغلاق النهائي: {purpose}',
  stop: 'لا تُرخِ ولا تشدّ حسب هذه البطاقة: امسحها لترى الوصلة كما هي الآن.',
  stub: 'يُنزع كل كعب عند إتمام خطوته ويذهب إلى رئيس الطاقم',
  stubName: 'الاسم',
  stubTime: 'التاريخ، الوقت',
  steps: {
    open: 'فُتحت',
    'faces-accepted': 'قُبلت الأوجه',
    'nipped-up': 'مشدودة أوليًا',
    tight: 'مشدودة',
    checked: 'مفحوصة',
  },
} satisfies SheetTexts['tags'];
