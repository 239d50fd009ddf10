/**
 * Values of single eyes on hover and by keyboard, for the page that stays in the clinic. Marks that bear an
 * aria-label are walked with the arrow keys from left to right; their label is shown beside them and read out.
 */
export const walkScript = `
(() => {
  const tip = document.querySelector('.tip');
  let here;
  const leave = () => { if (here) here.classList.remove('here'); here = undefined; tip.textContent = ''; };
  const show = (mark) => {
    if (here === mark) return;
    leave();
    here = mark;
    mark.classList.add('here');
    tip.textContent = mark.getAttribute('aria-label');
    place();
  };
  const place = () => {
    const box = here.getBoundingClientRect();
    const left = Math.min(box.right + 8, document.documentElement.clientWidth - tip.offsetWidth - 8);
    tip.style.left = Math.max(8, left) + 'px';
    tip.style.top = Math.max(8, box.top - tip.offsetHeight - 6) + 'px';
  };
  for (const paper of document.querySelectorAll('[data-walk]')) {
    const at = (mark) => { const box = mark.getBoundingClientRect(); return [box.left, box.top]; };
    const marks = [...paper.querySelectorAll('svg [aria-label]')].sort((a, b) => {
      const [p, q] = [at(a), at(b)];
      return p[0] - q[0] || p[1] - q[1];
    });
    paper.addEventListener('pointerover', (event) => {
      const mark = event.target.closest('svg [aria-label]');
      if (mark) show(mark); else leave();
    });
    paper.addEventListener('pointerleave', leave);
    paper.addEventListener('blur', leave);
    paper.addEventListener('keydown', (event) => {
      const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
      if (event.key === 'Escape') leave();
      if (!step || marks.length === 0) return;
      event.preventDefault();
      const from = marks.indexOf(here);
      show(marks[from < 0 ? (step > 0 ? 0 : marks.length - 1) : (from + step + marks.length) % marks.length]);
    });
  }
  // Focus may have scrolled the figure into view: the mark that the keys have reached stays, a hovered one moves away.
  const scrolled = () => { if (here && document.activeElement.matches('[data-walk]')) place(); else leave(); };
  addEventListener('scroll', scrolled, { passive: true });
})();
`;
