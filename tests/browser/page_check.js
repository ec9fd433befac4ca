// SPDX-License-Identifier: GPL-3.0-or-later
// Run inside a report's page by page_test.cpp, after axe-core. Replaces the page by what it
// found: a line "figures: N", a line "fault: ..." for each fault, and "checked" at the end.
"use strict";

const faults = [];

function describe(element) {
  return element.outerHTML.slice(0, 120).replace(/\s+/g, " ");
}

function textOf(root, selector) {
  const found = root.querySelector(selector);
  return found ? found.textContent.trim() : "";
}

function checkFigure(figure) {
  const svg = figure.querySelector("svg");
  if (!svg || svg.getAttribute("role") !== "img") {
    faults.push("a figure without an image: " + describe(figure));
    return;
  }
  for (const id of svg.getAttribute("aria-labelledby").split(" ")) {
    const label = document.getElementById(id);
    if (!label || !svg.contains(label) || label.textContent.trim() === "") {
      faults.push("a figure without its label " + id);
    }
  }
  if (textOf(figure, "figcaption") === "") faults.push("no caption: " + describe(figure));
  const next = figure.nextElementSibling;
  if (!next || !next.querySelector("table")) faults.push("no table after: " + describe(figure));
  checkWordsOf(svg);
}

// Words lie inside the drawing and none upon another.
function checkWordsOf(svg) {
  const slack = 1.0;
  const frame = svg.getBoundingClientRect();
  const boxes = [...svg.querySelectorAll("text")].map((text) => {
    return {words: text.textContent, box: text.getBoundingClientRect()};
  });
  const name = textOf(svg, "title");
  boxes.forEach(({words, box}, i) => {
    if (box.left < frame.left - slack || box.right > frame.right + slack ||
        box.top < frame.top - slack || box.bottom > frame.bottom + slack) {
      faults.push("cut off in \"" + name + "\": " + words);
    }
    for (const other of boxes.slice(i + 1)) {
      const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      // Boxes hold the room above and below the letters, which may touch.
      if (across > slack && down > 0.3 * Math.min(box.height, other.box.height)) {
        faults.push("in \"" + name + "\" \"" + words + "\" lies upon \"" + other.words + "\"");
      }
    }
  });
}

function checkTable(table) {
  if (textOf(table, "caption") === "") faults.push("no caption: " + describe(table));
  if (!table.querySelector("thead th[scope=col]")) faults.push("no headers: " + describe(table));
}

function checkPage() {
  document.querySelectorAll("figure").forEach(checkFigure);
  document.querySelectorAll("table").forEach(checkTable);
  const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
  ids.filter((id, i) => ids.indexOf(id) !== i).forEach((id) => faults.push("id twice: " + id));
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) {
    faults.push("the page is wider than the screen: " + root.scrollWidth);
  }
}

function show(figures) {
  const lines = ["figures: " + figures, ...faults.map((fault) => "fault: " + fault), "checked"];
  const shown = document.createElement("pre");
  shown.textContent = lines.join("\n");
  document.head.replaceChildren();
  document.body.replaceChildren(shown);
}

const figures = document.querySelectorAll("figure svg").length;
checkPage();
axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"]})
    .then((results) => {
      for (const violation of results.violations) {
        for (const node of violation.nodes) {
          faults.push(violation.id + ": " + violation.help + ": " + node.html.slice(0, 120));
        }
      }
      show(figures);
    })
    .catch((error) => {
      faults.push("axe-core failed: " + error);
      show(figures);
    });
