import { gasketOf } from '../derived/makes.ts';
import { IN_SERVICE_SCOPES } from '../stages.ts';
import { list, type Rule, rule } from './rule.ts';

const engineer = { remedy: 'The engineer assigns a procedure that fits.', clearedBy: ['engineer'] } as const;
const assigned = { events: ['procedure-assigned'], ...engineer } as const;

export const engineeredRules: readonly Rule[] = [
  rule({
    code: 'engineered.procedure-approved',
    sentence: 'The procedure revision is approved and not superseded.',
    why: 'A draft may still be wrong, and a superseded revision was replaced for a reason.',
    remedy: 'Approve the revision, or assign the one in force.',
    clearedBy: ['engineer'],
    events: ['procedure-assigned', 'target-approved'],
    test: (_payload, { procedure }) => {
      if (!procedure) return { detail: 'No such procedure revision is on record.' };
      const name = `${procedure.code} revision ${procedure.revision}`;
      if (!procedure.approved) return { detail: `${name} is not approved.` };
      return procedure.superseded ? { detail: `${name} is superseded.` } : null;
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.kind',
    sentence: 'The procedure is made for this kind of joint.',
    why: 'Each kind has its own sheet, checks and limits.',
    test: (_payload, { procedure, joint }) => {
      const kinds = procedure?.content.appliesTo.kinds ?? [];
      return !procedure || kinds.length === 0 || kinds.includes(joint.kind)
        ? null
        : { detail: `The joint is a ${joint.kind}.`, limit: kinds.join(', ') };
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.bolt-count',
    sentence: 'The procedure is made for this number of bolts.',
    why: 'The pattern and its passes depend on the number of bolts.',
    test: (_payload, { procedure, joint }) => {
      if (!procedure) return null;
      if (!joint.bolting) return { detail: 'The register does not give the bolting of the joint.' };
      const { leastBolts, mostBolts } = procedure.content.appliesTo;
      const { count } = joint.bolting;
      return count >= leastBolts && count <= mostBolts
        ? null
        : { detail: `The joint has ${count} bolts.`, limit: `${leastBolts} to ${mostBolts}` };
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.rating',
    sentence: 'The procedure is made for this class.',
    why: 'Loads and bolting change with the class.',
    test: (_payload, { procedure, joint }) => {
      const ratings = procedure?.content.appliesTo.ratings ?? [];
      const { rating } = joint.specification.flange;
      return ratings.length === 0 || ratings.includes(rating)
        ? null
        : { detail: `The joint is of class ${rating || '(not given)'}.`, limit: ratings.join(', ') };
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.gasket-family',
    sentence: 'The procedure is made for this family of gaskets.',
    why: 'Passes, limits and retightening depend on the gasket.',
    test: (_payload, { procedure, joint, make }) => {
      const families = procedure?.content.appliesTo.gasketFamilies ?? [];
      const { family } = gasketOf(joint, make);
      return families.length === 0 || families.includes(family)
        ? null
        : { detail: `The gasket is ${family}.`, limit: families.join(', ') };
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.tools',
    sentence: 'The tools and groups of the procedure divide the bolts of the joint evenly.',
    why: 'Tools set at once must stand opposite each other all the way round.',
    test: (_payload, { procedure, joint }) => {
      if (!procedure || !joint.bolting) return null;
      const { count } = joint.bolting;
      const { tools, group } = procedure.content;
      const wrong = [
        ...(tools > 1 && count % tools !== 0 ? [`${tools} tools at once`] : []),
        ...(group && group > 1 && count % group !== 0 ? [`groups of ${group}`] : []),
      ];
      return wrong.length === 0 ? null : { detail: `${list(wrong)} do not divide ${count} bolts.` };
    },
  }),
  rule({
    ...assigned,
    code: 'engineered.work-scope',
    sentence: 'Work on a joint in service has a procedure made for it.',
    why: 'A pressurised or hot joint is never loosened or tightened outside a procedure made for it.',
    floor: true,
    test: (_payload, { procedure, make }) => {
      const scopes = procedure?.content.appliesTo.workScopes ?? [];
      const inService = IN_SERVICE_SCOPES.includes(make.workScope);
      if (!procedure || scopes.includes(make.workScope) || (!inService && scopes.length === 0)) return null;
      return {
        detail: `The work scope is ${make.workScope} and the procedure does not name it.`,
        limit: scopes.length > 0 ? scopes.join(', ') : 'work out of service',
      };
    },
  }),
  rule({
    code: 'engineered.target-for-stack',
    sentence: 'The target is computed, tabled or given by the maker for this stack.',
    why: 'A target for another gasket loads this one wrongly.',
    remedy: 'Approve a target for this gasket and bolting.',
    clearedBy: ['engineer'],
    events: ['target-approved'],
    test: (_payload, { newTarget, joint, make }) => {
      if (!newTarget) return { detail: 'No target could be computed or found for this stack.' };
      const { family } = gasketOf(joint, make);
      if (newTarget.gasketFamily !== family)
        return { detail: `The target is for ${newTarget.gasketFamily}.`, limit: family };
      const grade = joint.bolting?.grade;
      return grade && newTarget.boltGrade && newTarget.boltGrade !== grade
        ? { detail: `The target is for bolts of ${newTarget.boltGrade}.`, limit: grade }
        : null;
    },
  }),
  rule({
    code: 'engineered.target-window',
    sentence: 'The target lies inside its window.',
    why: 'Outside it, a limit of bolt, gasket or flange is missed.',
    remedy: 'The engineer accepts the shortfall with a reason, or changes what governs.',
    clearedBy: ['engineer'],
    severity: 'reason',
    events: ['target-approved'],
    test: (_payload, { newTarget, shortfallAccepted }) =>
      newTarget && !newTarget.insideWindow && !newTarget.shortfallReason && !shortfallAccepted
        ? { detail: `The target is outside its window, governed by ${newTarget.governedBy ?? 'no limit given'}.` }
        : null,
  }),
];
