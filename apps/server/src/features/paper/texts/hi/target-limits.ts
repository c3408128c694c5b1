import type { SheetTexts } from '../sheet-texts.ts';

/** What a target assumes of its bolts, and the limits that its window holds or does not. */
export const targetLimits = {
  notChecked: 'जाँचा नहीं गया',
  item: '{limit} (कमी: {missing})',
  coated: 'कोटिंग: {coating}',
  bare: 'बिना कोटिंग',
  washers: { 0: 'बिना वॉशर', 1: 'हर बोल्ट पर एक वॉशर', 2: 'हर बोल्ट पर दो वॉशर' },
  elongation: 'इलोंगेशन',
  elongationLine: '{mm} mm ({in} in), नटों के बीचों-बीच {length} mm पर, मॉड्यूलस {GPa} GPa',
  limit: {
    'gasket-thermal-loss': 'बोल्ट फ्लैंज से ज़्यादा गर्म',
    'bolt-thermal-gain': 'बोल्ट, फ्लैंज ज़्यादा गर्म',
    'gasket-thermal-gain': 'गैस्केट, फ्लैंज ज़्यादा गर्म',
    'flange-rotation': 'फ्लैंज का रोटेशन',
    'flange-rigidity': 'फ्लैंज की रिजिडिटी',
    'flange-stress-assembly': 'असेंबली पर फ्लैंज स्ट्रेस',
    'flange-stress-operating': 'चालू हालत में फ्लैंज स्ट्रेस',
    'flange-stress-test': 'टेस्ट पर फ्लैंज स्ट्रेस',
  },
  unchecked: {
    'coating-temperature': 'कोटिंग का तापमान',
    'external-load': 'बाहरी खिंचाव और मोमेंट',
    'flange-rotation': 'फ्लैंज का रोटेशन',
    'flange-strength': 'फ्लैंज की मज़बूती',
    'gasket-test': 'टेस्ट दबाव पर गैसकेट',
    'nut-bearing': 'नट के नीचे की टेक',
    'pass-partition-ribs': 'गैसकेट की पास-पार्टिशन पट्टियाँ',
    thermal: 'बोल्ट और फ्लैंज अलग-अलग तापमान पर',
  },
  missing: {
    'bolt-material': 'बोल्ट का मॉड्यूलस और फैलाव (प्रोसीजर)',
    'clamped-thickness': 'कसे गए हर भाग की मोटाई (रजिस्टर)',
    coating: 'कोटिंग (प्रोसीजर)',
    'external-load': 'खिंचाव और मोमेंट (रजिस्टर)',
    'flange-strength-data': 'फ्लैंज के अनुमत तनाव या उसका अधिकतम बोल्ट तनाव (रजिस्टर)',
    'gasket-rotation-limit': 'गैसकेट कितना रोटेशन सहता है (गैसकेट डेटा)',
    'rib-area': 'पट्टियों का क्षेत्रफल (रजिस्टर)',
    temperatures: 'बोल्ट और फ्लैंज के तापमान (रजिस्टर)',
    'test-pressure': 'टेस्ट दबाव (रजिस्टर)',
    washers: 'वॉशर (प्रोसीजर)',
  },
} satisfies SheetTexts['targetLimits'];
