/** What every paper says. */
export const shared = {
  product: 'Seatwell',
  page: 'página {page} de {pages}',
  none: '–',
  printedAt: 'impreso {printed}',
  notEntered: 'sin ingresar',
  someone: 'nombre no guardado',
  noReason: 'sin motivo indicado',
  safety: {
    title: 'Advertencias',
    site: 'Del procedimiento',
    lines: [
      'Nunca aflojar ni apretar una unión con presión fuera de un procedimiento hecho para ello.',
      'Comprobar dos veces el aislamiento y la energía cero antes del primer perno.',
      'Aflojar primero el lado más alejado de uno y dejar dos pernos opuestos hasta que no haya energía.',
      'Contar con producto residual y costra pirofórica.',
      'Mantenerse fuera de la línea de fuego de pernos, tensionadores y mangueras hidráulicas.',
      'Cuidado con los puntos de atrapamiento y la inyección de fluido.',
      'Mantenerse alejado de las pruebas con gas.',
    ],
    defers:
      'Los valores apoyan, y no reemplazan, al ingeniero responsable, los procedimientos del sitio y los códigos locales. Donde difieran, mandan estos.',
  },
  stop: {
    heading: 'PARAR Y LLAMAR',
    text: 'Empaque, pernos o brida distintos de lo impreso, daño, una abertura que no cierra pareja, una tuerca que gira sin carga, una herramienta que salta antes de tiempo, un número dudoso: parar, dejar seguro, llamar a {who}.',
    who: 'capataz e ingeniero de uniones',
    phone: 'Teléfono',
  },
};
