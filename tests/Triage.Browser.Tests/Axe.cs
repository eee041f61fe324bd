using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Triage.Browser.Tests;

/// <summary>What keeps people out of a page, by axe-core; put in once a page, so that a second look costs little.</summary>
internal static class Axe
{
    /// <summary>Rules that look at colours; what the others look at is the same by day and by night.</summary>
    public static readonly string[] Colours = ["color-contrast", "link-in-text-block"];

    private static readonly string script = new BundledAxeScriptProvider().GetScript();

    /// <param name="rules">Ids; none for all.</param>
    /// <returns>One line each: impact, rule, where.</returns>
    public static async Task<string[]> Violations(IPage page, params string[] rules)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
            await page.EvaluateAsync($"() => {{ {script} }}");
        return await page.EvaluateAsync<string[]>("""
            async rules => {
              const only = rules.length ? { runOnly: { type: "rule", values: rules } } : {};
              const result = await axe.run(document, { resultTypes: ["violations"], ...only });
              if (result.passes.length === 0)
                throw new Error("axe looked at nothing");
              return result.violations.map(v => `${v.impact} ${v.id} ${v.nodes[0]?.html}`);
            }
            """, rules).WaitAsync(TimeSpan.FromSeconds(90));
    }
}
