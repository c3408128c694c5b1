import type { SheetTexts } from '../sheet-texts.ts';

/** What a target assumes of its bolts, and the limits that its window holds or does not. */
export const targetLimits = {
  notChecked: 'لم يُفحص',
  item: '{limit} (ينقص: {missing})',
  coated: 'مطلية: {coating}',
  bare: 'بلا طلاء',
  washers: { 0: 'بلا وردات', 1: 'وردة لكل برغي', 2: 'وردتان لكل برغي' },
  elongation: 'الاستطالة',
  elongationLine: '{mm} mm ({in} in) على طول {length} mm بين منتصفي الصامولتين، معامل المرونة {GPa} GPa',
  limit: {
    'gasket-thermal-loss': 'البراغي أسخن من الفلنجات',
    'bolt-thermal-gain': 'البرغي، والفلنجات أسخن',
    'gasket-thermal-gain': 'الحشية، والفلنجات أسخن',
    'flange-rotation': 'دوران الفلنجة',
    'flange-rigidity': 'جساءة الفلنجة',
    'flange-stress-assembly': 'إجهادات الفلنجة عند التجميع',
    'flange-stress-operating': 'إجهادات الفلنجة في التشغيل',
    'flange-stress-test': 'إجهادات الفلنجة في الاختبار',
  },
  unchecked: {
    'coating-temperature': 'حرارة الطلاء',
    'external-load': 'الشد والعزم الخارجيان',
    'flange-rotation': 'دوران الفلنجة',
    'flange-strength': 'مقاومة الفلنجة',
    'gasket-test': 'الحشية عند ضغط الاختبار',
    'nut-bearing': 'الارتكاز تحت الصامولة',
    'pass-partition-ribs': 'أضلاع تقسيم الممرات في الحشية',
    thermal: 'اختلاف حرارة البراغي والفلنجات',
  },
  missing: {
    'bolt-material': 'معامل مرونة البراغي وتمددها (الإجراء)',
    'clamped-thickness': 'سماكة كل جزء مشدود (السجل)',
    coating: 'الطلاء (الإجراء)',
    'external-load': 'الشد والعزم (السجل)',
    'flange-strength-data': 'الإجهادات المسموحة أو أعلى إجهاد براغٍ للفلنجة (السجل)',
    'gasket-rotation-limit': 'الدوران الذي تتحمله الحشية (بيانات الحشية)',
    'rib-area': 'مساحة الأضلاع (السجل)',
    temperatures: 'حرارة البراغي والفلنجات (السجل)',
    'test-pressure': 'ضغط الاختبار (السجل)',
    washers: 'الوردات (الإجراء)',
  },
} satisfies SheetTexts['targetLimits'];
