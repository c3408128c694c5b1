// One line per feature: the catalogue's file name is the name given to useText().
export { default as app } from './app.json';
export { default as engineering } from './engineering.json';
export { default as found } from './found.json';
export { default as handover } from './handover.json';
export { default as import } from './import.json';
export { default as joint } from './joint.json';
export { default as jointForm } from './joint-form.json';
export { default as mine } from './mine.json';
export { default as register } from './register.json';
export { default as session } from './session.json';
export { default as signing } from './signing.json';
export { default as talk } from './talk.json';
export { default as testing } from './testing.json';
export { default as tightening } from './tightening.json';
export { default as trade } from './trade.json';
export { default as ui } from './ui.json';
export { default as work } from './work.json';
