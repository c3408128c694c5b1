// One line per feature: the catalogue's file name is the name given to useText().
export { default as ui } from './ui.json';
