using System.Text.Json.Serialization;

namespace Triage.SolvePlans;

/// <summary>The file of instances, in the shape of tests/data/planner.md.</summary>
internal sealed record InstanceFile(Instance[] Instances);

internal sealed record Instance(
    string Id, Fault[] Faults, Step[]? Access, Fix[] Fixes, Test[] Tests, [property: JsonPropertyName("stop_cost")] double StopCost);

internal sealed record Fault(string Id, double P);

internal sealed record Step(string Id, double Cost, string? Parent);

internal sealed record Fix(string Id, double Cost, string? Access, Dictionary<string, double> Repairs);

internal sealed record Test(
    string Id, double Cost, string? Access, [property: JsonPropertyName("p_positive")] Dictionary<string, double> PPositive);

internal sealed record AnswerFile(List<Answer> Answers);

/// <param name="Policy">From each state that is reached to an action or "stop".</param>
internal sealed record Answer(string Id, double Cost, SortedDictionary<string, string> Policy);
