/** Tags that hang at the joint, and labels. */
export const tags = {
  title: 'Etiquetas de ligação',
  studs: '{count} × {thread}',
  seenFrom: 'Visto de {side}',
  bolt1: 'Parafuso 1: {place}',
  notFinal: 'NÃO É O FECHAMENTO DEFINITIVO: {purpose}',
  stop: 'Não afrouxar nem apertar por esta etiqueta: ler o código para ver a ligação como está agora.',
  stub: 'Cada canhoto é destacado quando a etapa está feita e vai para o encarregado',
  stubName: 'Nome',
  stubTime: 'Data, hora',
  steps: {
    open: 'ABERTA',
    'faces-accepted': 'FACES ACEITAS',
    'nipped-up': 'ENCOSTADA',
    tight: 'APERTADA',
    checked: 'VERIFICADA',
  },
};
