import type { RegisterField } from './fields.ts';

/**
 * Header wordings by field, matched against the header in lower case without signs and units. `exact` names the
 * field beyond doubt; `likely` needs the samples to agree or no better column.
 */
export const headerWords: Readonly<Record<RegisterField, { readonly exact: RegExp; readonly likely: RegExp }>> = {
  // A bare "No." is more often the running number of the list than the tag.
  tag: {
    exact:
      /^((joint|flange|flg|jt|bolted joint) )?tag( (no|number|id))?$|^(joint|flange|flg|jt)( (no|number|id|ref|reference))?$/,
    likely: /\b(tag|joint (no|id|ref)|flange (no|id|ref)|jt no)\b|^(no|number|id|ref|reference)$/,
  },
  area: {
    exact: /^(area|plant area|unit area|zone|work area)( (no|name|code))?$/,
    likely: /\b(area|zone|unit|train)\b/,
  },
  system: { exact: /^(system|test system)( (no|name|code|id|number))?$/, likely: /^(?!.*sub).*\bsystem\b/ },
  subsystem: { exact: /^sub ?system( (no|name|code|id|number))?$/, likely: /\bsub ?sys(tem)?\b/ },
  line: {
    exact: /^(line|line (no|number|id|tag)|pipe line( no)?|piping line( no)?|pipe (no|number))$/,
    likely: /\b(line|pipeline)\b/,
  },
  location: {
    exact: /^(location|place|position|elevation|level|joint location|where)$/,
    likely: /\b(location|elevation|deck|floor|position)\b/,
  },
  drawing: {
    exact: /^(drawing|drg|dwg|iso|isometric|p ?(and )?id|pid|iso (no|number|drawing))( (no|number|ref|rev))?$/,
    likely: /\b(drawing|drg|dwg|isometric|iso|p id|pid)\b/,
  },
  kind: {
    exact: /^((joint|flange|connection) )?(type|kind)( of (joint|connection))?$|^(joint|connection) description$/,
    likely: /\b(joint type|type of joint|flange type|connection type|kind)\b/,
  },
  standard: {
    exact: /^(flange )?(standard|std|code|design standard|flange code)$/,
    likely: /\b(standard|flange std|flange spec)\b/,
  },
  size: {
    exact:
      /^((flange|nominal|pipe|line|joint) )?(size|nps|dn|nb|nominal (size|bore|diameter|dia)|nom size|bore|diameter|dia)( (nps|dn|nb))?$/,
    likely: /\b(size|nps|dn|nominal (bore|diameter))\b/,
  },
  rating: {
    exact:
      /^((flange|pressure|asme|ansi) )?(rating|class|cl|pn|pressure class|lbs?)( class| pn)?$|^(class|rating) pn$|^pn class$/,
    likely: /\b(rating|class|pn)\b/,
  },
  facing: {
    exact: /^(flange )?(face|facing|face type|type of face|flange face)( type)?$/,
    likely: /\b(fac(e|ing)|finish)\b/,
  },
  boltCount: {
    exact:
      /^(no|nr|num|number|qty|quantity|count) (of )?(bolts?|studs?|stud bolts?)$|^(bolts?|studs?|stud bolts?|bolting) (qty|quantity|count|no|nos|number|no off)$|^(bolts|studs)$/,
    likely:
      /\b(bolts?|studs?)\b.*\b(qty|quantity|count|nos?|number)\b|\b(qty|quantity|count|nos?|number)\b.*\b(bolts?|studs?)\b/,
  },
  boltThread: {
    exact: /^(bolt|stud|stud bolt|bolting|thread)( (size|dia|diameter|thread|designation|o))*$/,
    likely: /\b(bolt|stud|thread)\b.*\b(size|dia|diameter|thread)\b|\bthread\b/,
  },
  boltLength: {
    exact: /^(bolt|stud|stud bolt|bolting) (length|len|lg)$/,
    likely: /\b(bolt|stud)\b.*\b(length|len|lg)\b/,
  },
  boltGrade: {
    exact: /^(bolt|stud|stud bolt|bolting|fastener) (grade|material|mat|matl|spec|specification)( grade)?$|^bolting$/,
    likely: /\b(bolt|stud|bolting)\b.*\b(grade|mat(erial|l)?|spec)\b/,
  },
  gasketFamily: {
    exact: /^gasket( (type|family|kind|style))?$/,
    likely: /\bgasket\b.*\b(type|family|style)\b|\bgskt\b/,
  },
  gasketDetail: {
    exact: /^gasket (detail|details|description|desc|material|mat|matl|spec|specification|marking)$/,
    likely: /\bgasket\b.*\b(detail|desc|material|spec|marking|dimension)/,
  },
  gasketCount: {
    exact: /^(gasket (qty|quantity|count|no|nos|number))$|^(no|nr|number|qty|quantity) (of )?gaskets?$/,
    likely: /\bgaskets?\b.*\b(qty|count|quantity)\b/,
  },
  insertThickness: {
    exact: /^(insert|spade|blind|spacer|spectacle|plate|valve)( (thk|thickness|width|face to face))$/,
    likely: /\b(insert|spade|blind|spacer|plate)\b.*\b(thk|thickness)\b/,
  },
  medium: {
    exact:
      /^(medium|service|fluid|product|contents|process fluid|commodity|fluid service|service fluid)( (code|description))?$/,
    likely: /\b(medium|service|fluid|commodity)\b/,
  },
  designPressure: {
    exact: /^(design|des|max design) (pressure|press|p)$|^dp$|^pressure$|^press$/,
    likely: /\b(des(ign)?|oper(ating)?|max)\b.*\bpress(ure)?\b/,
  },
  designTemperature: {
    exact: /^(design|des|max design) (temperature|temp|t)$|^dt$|^(temperature|temp)$/,
    likely: /\btemp(erature)?\b/,
  },
  testPack: {
    exact: /^(test ?pack(age)?|tp|pack|hydrotest pack|test pack(age)?s)( (no|number|id|ref))?$/,
    likely: /\b(test ?pack(age)?|tp)\b/,
  },
  testPressure: {
    exact: /^(test|hydrotest|hydro|hydro test) (pressure|press|p)$/,
    likely: /\btest\b.*\bpress(ure)?\b/,
  },
  criticality: {
    exact:
      /^(criticality|crit|critical|risk|joint criticality|criticality (level|class|rating)|risk (level|rank|category))$/,
    likely: /\b(critical(ity)?|risk)\b/,
  },
  workScope: {
    exact: /^(work ?scope|scope|scope of work|activity|work type|work|operation|job)$/,
    likely: /\b(scope|activity|work)\b/,
  },
  plannedDate: {
    exact: /^(planned|plan|scheduled|target|due|start|finish)?( ?(start|finish))? ?date$|^planned (for|on)$|^planned$/,
    likely: /\b(date|planned|scheduled|due)\b/,
  },
  crew: {
    exact: /^(crew|team|gang|contractor|squad|responsible crew)( (no|name|code))?$/,
    likely: /\b(crew|team|gang|contractor)\b/,
  },
  item: {
    exact: /^(item|equipment|equip|equipment tag|equip tag|valve|valve tag|equipment (no|number)|item (no|tag)|asset)$/,
    likely: /\b(equipment|equip|valve|item|asset|vessel)\b/,
  },
  viewedFrom: {
    exact: /^(viewed|seen|view|looking) from$|^(viewing|view) (side|direction)$/,
    likely: /\b(view(ed|ing)?|looking)\b/,
  },
  bolt1At: {
    exact: /^(bolt|stud) (no )?1( (at|position|location|where|datum))?$|^(first bolt|datum bolt)( at)?$/,
    likely: /\b(bolt|stud) (no )?1\b/,
  },
  remark: { exact: /^(remarks?|comments?|notes?|remarks? comments?)$/, likely: /\b(remarks?|comments?|notes?)\b/ },
};
