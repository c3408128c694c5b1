import { resolveJoint } from './joint.ts';
import type { TargetAnswer, TargetRequest, WindowLimit } from './request.ts';
import { targetWindow } from './target-window.ts';

export interface Sensitivity {
  readonly input:
    | 'friction'
    | 'scatter'
    | 'pressure'
    | 'gasket-target'
    | 'gasket-seating'
    | 'gasket-maximum'
    | 'yield'
    | 'temperature-difference';
  /** Change of the target bolt stress when the input is 10 % more, percent. */
  readonly target_percent: number;
  /** Change of the torque, percent; undefined where the method has none. */
  readonly torque_percent?: number;
  /** Change of the window's floor (highest lower limit) and ceiling (lowest upper limit), percent. */
  readonly floor_percent: number;
  readonly ceiling_percent: number;
  /** Whether the window is still open. */
  readonly open: boolean;
}

const MORE = 1.1;

function variants(
  input: TargetRequest,
  yield_MPa: number,
): readonly (readonly [Sensitivity['input'], TargetRequest])[] {
  const { lubricant, policy, service, gasket, bolting } = input;
  const { limits } = gasket;
  const rougher =
    'nutFactor' in lubricant
      ? { ...lubricant, nutFactor: lubricant.nutFactor * MORE }
      : {
          ...lubricant,
          threadFriction: lubricant.threadFriction * MORE,
          bearingFriction: lubricant.bearingFriction * MORE,
        };
  const list: (readonly [Sensitivity['input'], TargetRequest])[] = [
    ['friction', { ...input, lubricant: rougher }],
    ['pressure', { ...input, service: { ...service, pressure_MPa: service.pressure_MPa * MORE } }],
    ['yield', { ...input, bolting: { ...bolting, yield_MPa: yield_MPa * MORE, yieldSource: '10 % more' } }],
  ];
  const { thermal } = service;
  if (thermal !== undefined) {
    const cold_C = thermal.assemblyTemperature_C;
    const further = (value_C: number) => cold_C + (value_C - cold_C) * MORE;
    const states = thermal.states.map((state) => ({
      ...state,
      boltTemperature_C: further(state.boltTemperature_C),
      flangeTemperature_C: further(state.flangeTemperature_C),
    }));
    list.push(['temperature-difference', { ...input, service: { ...service, thermal: { ...thermal, states } } }]);
  }
  if (policy.scatter_percent !== undefined) {
    list.push(['scatter', { ...input, policy: { ...policy, scatter_percent: policy.scatter_percent * MORE } }]);
  }
  if (limits !== undefined) {
    const maximum_MPa = Math.max(limits.maximum_MPa, limits.target_MPa * MORE, limits.seating_MPa * MORE);
    const more = { ...limits, maximum_MPa };
    list.push(
      ['gasket-target', { ...input, gasket: { ...gasket, limits: { ...more, target_MPa: limits.target_MPa * MORE } } }],
      [
        'gasket-maximum',
        { ...input, gasket: { ...gasket, limits: { ...limits, maximum_MPa: limits.maximum_MPa * MORE } } },
      ],
      [
        'gasket-seating',
        { ...input, gasket: { ...gasket, limits: { ...more, seating_MPa: limits.seating_MPa * MORE } } },
      ],
    );
  }
  return list;
}

/**
 * How the window and the target answer to each input that is 10 % more, others kept.
 *
 * @param input.request as targetWindow takes it
 * @throws CalcRefusal as targetWindow
 */
export function targetSensitivities({ request: asked }: { readonly request: TargetRequest }): readonly Sensitivity[] {
  const { working: _working, ...request } = asked;
  const base = targetWindow(request);
  const { yield_MPa } = resolveJoint(request);
  // A floor of nothing stays nothing.
  const change = (now: number, then: number) => (now === then ? 0 : (now / then - 1) * 100);
  const edges = ({ window }: TargetAnswer) => {
    const stresses = (limits: readonly WindowLimit[]) =>
      limits.filter(({ advisory }) => advisory !== true).map(({ boltStress_MPa }) => boltStress_MPa);
    return { floor: Math.max(...stresses(window.lower)), ceiling: Math.min(...stresses(window.upper)) };
  };
  const baseEdges = edges(base);
  return variants(request, yield_MPa).map(([name, changed]) => {
    const answer = targetWindow(changed);
    const torque = answer.tool.torque_Nm;
    const baseTorque = base.tool.torque_Nm;
    return {
      input: name,
      target_percent: change(answer.target.boltStress_MPa, base.target.boltStress_MPa),
      ...(torque === undefined || baseTorque === undefined ? {} : { torque_percent: change(torque, baseTorque) }),
      floor_percent: change(edges(answer).floor, baseEdges.floor),
      ceiling_percent: change(edges(answer).ceiling, baseEdges.ceiling),
      open: answer.window.open,
    };
  });
}
