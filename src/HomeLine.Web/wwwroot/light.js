// The skip link, and day or night. The latter follows the machine until a person chooses, then remembers the choice in this browser. Nothing else is kept here.
(() => {
  const key = "homeline-light";
  const root = document.documentElement;
  const chosen = localStorage.getItem(key);
  if (chosen === "day" || chosen === "night") root.dataset.light = chosen;

  document.addEventListener("click", event => {
    if (!(event.target instanceof Element)) return;
    if (event.target.closest("[data-skip]")) {
      event.preventDefault();
      document.getElementById("page").focus();
    }
    if (!event.target.closest("[data-light-switch]")) return;
    const isNight = root.dataset.light
      ? root.dataset.light === "night"
      : matchMedia("(prefers-color-scheme: dark)").matches;
    root.dataset.light = isNight ? "day" : "night";
    localStorage.setItem(key, root.dataset.light);
  });
})();
