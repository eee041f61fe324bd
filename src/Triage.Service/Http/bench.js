"use strict";
// Sends forms without loading the whole page anew: only <main> is exchanged. Without it everything works the same.
(() => {
  const busy = "aria-busy";
  document.addEventListener("submit", async event => {
    const form = event.target, button = event.submitter;
    const action = new URL(button?.getAttribute("formaction") ?? form.action, location.href);
    if (form.method !== "post" || action.origin !== location.origin || event.defaultPrevented) return;
    event.preventDefault();
    const main = document.getElementById("main");
    if (main.hasAttribute(busy)) return;
    main.setAttribute(busy, "true");
    const fields = new FormData(form, button);
    const body = form.enctype === "multipart/form-data" ? fields : new URLSearchParams(fields);
    try {
      const answer = await fetch(action, { method: "POST", body, headers: { Accept: "text/html" } });
      show(new DOMParser().parseFromString(await answer.text(), "text/html"), answer, fields.get("back"), form, button);
    } catch {
      main.removeAttribute(busy);
      say("The bench did not answer: it may be stopped, or the network gone. What you typed is still here; send it again.");
    }
  });

  function show(page, answer, back, form, button) {
    const beside = neighbour(form), top = beside?.getBoundingClientRect().top;
    document.getElementById("main").replaceWith(page.getElementById("main"));
    document.title = page.title;
    if (answer.redirected) history[new URL(answer.url).pathname === location.pathname ? "replaceState" : "pushState"](null, "", answer.url);
    const told = document.querySelector("[role=alert], [role=status]"), anchor = told ? null : again(beside), same = anchor && again(form);
    const pressed = same && neighbour(same) === anchor ? same.querySelector(`button[value="${CSS.escape(button?.value ?? "")}"]`) : null;
    const place = told ?? pressed ?? anchor ?? document.getElementById(back) ?? document.getElementById("main");
    if (place !== pressed) place.tabIndex = -1;
    place.focus({ preventScroll: true });
    if (anchor) scrollBy(0, anchor.getBoundingClientRect().top - top);
    else place.scrollIntoView({ block: "nearest" });
    document.documentElement.dataset.exchanged = 1 + Number(document.documentElement.dataset.exchanged ?? 0);
  }

  const about = form => form.elements.about?.value;

  // of a list the one below, which stays where it was on the screen: what was answered may have moved
  function neighbour(form) {
    const list = [...(form.closest("section")?.querySelectorAll("form") ?? [])].filter(about), at = list.indexOf(form);
    return at < 0 ? undefined : list[at + 1] ?? list[at - 1];
  }

  const again = form => form && [...document.forms].find(other => other.action === form.action && about(other) === about(form));

  function say(words) {
    const line = document.createElement("p");
    line.className = "refused";
    line.setAttribute("role", "alert");
    line.textContent = words;
    document.getElementById("main").prepend(line);
    line.scrollIntoView();
  }

  addEventListener("popstate", () => location.reload());
})();
