import type { InputName, Inputs } from './inputs.ts';
import { lookUp } from './request.ts';

/** Inputs that belong together: where one of the first is entered, all of the second are needed. */
const TOGETHER: readonly { readonly where: readonly InputName[]; readonly needed: readonly InputName[] }[] = [
  {
    where: ['strengthKind'],
    needed: [
      'allowableAmbient_MPa',
      'allowableOperating_MPa',
      'modulusAmbient_MPa',
      'modulusOperating_MPa',
      'strengthSource',
    ],
  },
  { where: ['rotationLimit_deg', 'rotationAtMaximum_deg'], needed: ['rotationLimit_deg', 'rotationSource'] },
  {
    where: ['startBolt_C', 'startFlange_C', 'coolBolt_C', 'coolFlange_C'],
    needed: [
      'assembly_C',
      'boltExpansion_ppmK',
      'flangeExpansion_ppmK',
      'expansionSource',
      'grip_mm',
      'elasticModulus_MPa',
    ],
  },
  { where: ['startBolt_C', 'startFlange_C'], needed: ['startBolt_C', 'startFlange_C'] },
  { where: ['coolBolt_C', 'coolFlange_C'], needed: ['coolBolt_C', 'coolFlange_C'] },
  {
    where: ['flangeStiffness_kNmm', 'gasketStiffness_kNmm'],
    needed: ['flangeStiffness_kNmm', 'gasketStiffness_kNmm', 'stiffnessSource'],
  },
  { where: ['coatingMaximum_C'], needed: ['coating', 'coatingSource'] },
];

/** The inputs that are still missing for a target, in the order of the screen. */
export function missingInputs(inputs: Inputs): readonly InputName[] {
  const { gasket } = lookUp(inputs);
  const custom = inputs.standard === 'custom';
  const contact =
    inputs.family === 'ring-joint'
      ? (['ringPitch_mm', 'ringWidth_mm', 'ringSource'] as const)
      : gasket === undefined
        ? (['contactInside_mm', 'contactOutside_mm'] as const)
        : [];
  const needed: readonly InputName[] = [
    'standard',
    custom ? 'boltCount' : 'size',
    custom ? 'thread' : 'rating',
    'family',
    ...contact,
    'seating_MPa',
    'operating_MPa',
    'target_MPa',
    'maximum_MPa',
    'gasketSource',
    'grade',
    'condition',
    'pressure_MPa',
    'temperature_C',
    ...(inputs.friction === 'friction' ? (['threadFriction', 'bearingFriction'] as const) : (['nutFactor'] as const)),
    'lubricantSource',
    'method',
    'leastShare_percent',
    'mostShare_percent',
    ...TOGETHER.flatMap(({ where, needed: together }) =>
      where.some((name) => inputs[name] !== undefined) ? together : [],
    ),
  ];
  return [...new Set(needed)].filter((name) => inputs[name] === undefined);
}
