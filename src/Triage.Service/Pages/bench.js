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
      show(new DOMParser().parseFromString(await answer.text(), "text/html"), answer, fields.get("back"));
    } catch {
      main.removeAttribute(busy);
      say("The bench did not answer: it may be stopped, or the network gone. What you typed is still here; send it again.");
    }
  });

  function show(page, answer, back) {
    document.getElementById("main").replaceWith(page.getElementById("main"));
    document.title = page.title;
    if (answer.redirected || answer.ok) history.pushState(null, "", answer.url);
    const place = document.querySelector("[role=alert], [role=status]") ?? document.getElementById(back) ?? document.getElementById("main");
    place.tabIndex = -1;
    place.focus({ preventScroll: true });
    place.scrollIntoView({ block: "nearest" });
    document.documentElement.dataset.exchanged = 1 + Number(document.documentElement.dataset.exchanged ?? 0);
  }

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
