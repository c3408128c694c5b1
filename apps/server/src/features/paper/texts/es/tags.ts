/** Tags that hang at the joint, and labels. */
export const tags = {
  title: 'Etiquetas de unión',
  studs: '{count} × {thread}',
  seenFrom: 'Vista desde {side}',
  bolt1: 'Perno 1: {place}',
  notFinal: 'NO ES EL CIERRE DEFINITIVO: {purpose}',
  stop: 'No aflojar ni apretar según esta etiqueta: escanearla para ver la unión como está ahora.',
  stub: 'Cada talón se arranca al hacer su paso y va al capataz',
  stubName: 'Nombre',
  stubTime: 'Fecha, hora',
  steps: {
    open: 'ABIERTA',
    'faces-accepted': 'CARAS ACEPTADAS',
    'nipped-up': 'ARRIMADA',
    tight: 'APRETADA',
    checked: 'VERIFICADA',
  },
};
