using System.Collections.Immutable;
using System.Text.Json;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>The problems of planner-open.json, whose optima were found by two other implementations (planner.md).</summary>
internal sealed record OpenInstance(string Id, RepairProblem Problem, double Optimum, string[] FirstActions, JsonElement Policies)
{
    public static ImmutableArray<OpenInstance> All { get; } = Read();

    private static ImmutableArray<OpenInstance> Read()
    {
        var file = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "planner-open.json"));
        return [.. JsonDocument.Parse(file).RootElement.GetProperty("instances").EnumerateArray().Select(Read)];
    }

    private static OpenInstance Read(JsonElement instance)
    {
        var faults = instance.GetProperty("faults").EnumerateArray().ToList();
        var optimum = instance.GetProperty("optimum");
        return new OpenInstance(
            instance.GetProperty("id").GetString()!, Posed(instance, faults), optimum.GetProperty("cost").GetDouble(),
            [.. optimum.GetProperty("first_actions").EnumerateArray().Select(a => a.GetString()!)], instance.GetProperty("policies"));
    }

    private static RepairProblem Posed(JsonElement instance, List<JsonElement> faults) => new()
    {
        Belief = [.. faults.Select((f, i) => new Hypothesis(f.GetProperty("p").GetDouble(), [new FaultyRoot(i, 1)]))],
        Options =
        [
            new StopOption("stop", new Expense(0, instance.GetProperty("stop_cost").GetDouble())),
            .. instance.GetProperty("fixes").EnumerateArray().Select(f => new FixOption(Text(f, "id")!, Cost(f), Clears(f, faults)) { Access = Text(f, "access") }),
            .. instance.GetProperty("tests").EnumerateArray().Select(t => new TestOption(Text(t, "id")!, Cost(t), Reveals(t, faults)) { Access = Text(t, "access") }),
        ],
        Access = new AccessTree([.. instance.GetProperty("access").EnumerateArray()
            .Select(s => new AccessStep(Text(s, "id")!, s.GetProperty("cost").GetDouble(), Text(s, "parent")))]),
        Rates = new Rates(ValueOfHour: 60, CostOfDay: 0),
    };

    private static ImmutableArray<Clearing> Clears(JsonElement fix, List<JsonElement> faults) =>
        [.. faults.Index().Where(f => fix.GetProperty("repairs").TryGetProperty(Text(f.Item, "id")!, out _))
            .Select(f => new Clearing(f.Index, 1, fix.GetProperty("repairs").GetProperty(Text(f.Item, "id")!).GetDouble()))];

    private static Finding Reveals(JsonElement test, List<JsonElement> faults)
    {
        var positive = faults.Select(f => test.GetProperty("p_positive").GetProperty(Text(f, "id")!).GetDouble());
        return new Finding(Text(test, "id")!, ["-", "+"], [1, 0], [.. positive.Select((p, i) => new Link(i, 1, [1 - p, p]))]) { Nominal = true };
    }

    private static Expense Cost(JsonElement action) => new(0, action.GetProperty("cost").GetDouble());

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();
}
