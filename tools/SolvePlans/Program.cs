using System.Text.Json;
using Triage.Reasoning.Planning;
using Triage.SolvePlans;

var exact = !args.Contains("--no-exact");
var files = args.Where(a => a != "--no-exact").ToArray();
if (files is not [var read, var written])
{
    Console.Error.WriteLine("Usage: solve-plans IN.json OUT.json [--no-exact]");
    return 2;
}

var json = new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, RespectNullableAnnotations = true };
try
{
    var instances = JsonSerializer.Deserialize<InstanceFile>(File.ReadAllText(read), json)!.Instances;
    var budget = PlannerBudget.Default with { Exact = exact };
    var answers = instances.Select(i => new PolicyWalk(i, budget).Follow()).ToList();
    File.WriteAllText(written, JsonSerializer.Serialize(new AnswerFile(answers), json));
    Console.WriteLine($"{answers.Count} plans written to {written}");
    return 0;
}
catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or JsonException or ArgumentException)
{
    Console.Error.WriteLine($"{read}: {wrong.Message}");
    return 1;
}
