/** What every paper says. */
export const shared = {
  product: 'Seatwell',
  page: 'página {page} de {pages}',
  none: '–',
  printedAt: 'impresso {printed}',
  notEntered: 'não informado',
  someone: 'nome não guardado',
  noReason: 'sem motivo informado',
  safety: {
    title: 'Avisos',
    site: 'Do procedimento',
    lines: [
      'Nunca afrouxar nem apertar uma ligação com pressão fora de um procedimento feito para isso.',
      'Comprovar o isolamento e a energia zero duas vezes antes do primeiro parafuso.',
      'Afrouxar primeiro o lado oposto e manter dois parafusos opostos até estar sem pressão.',
      'Contar com produto residual e carepa pirofórica.',
      'Ficar fora da linha de fogo de parafusos, tensionadores e mangueiras hidráulicas.',
      'Cuidado com pontos de esmagamento e injeção de fluido.',
      'Manter distância de testes com gás.',
    ],
    defers:
      'Os valores apoiam, e não substituem, o engenheiro responsável, os procedimentos da planta e os códigos locais. Onde houver diferença, estes prevalecem.',
  },
  stop: {
    heading: 'PARAR E CHAMAR',
    text: 'Junta, parafusos ou flange diferentes do impresso, dano, afastamento que não fecha por igual, porca que gira sem carga, ferramenta que dispara cedo, número duvidoso: parar, deixar seguro, chamar {who}.',
    who: 'o encarregado e o engenheiro de ligações',
    phone: 'Telefone',
  },
};
