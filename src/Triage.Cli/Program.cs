using Triage.Cli;
using Triage.Search.Meaning;
using Triage.Workshop.Model;

// texts already understood and fits already made, so that a command need not work them out again; only caches
var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
var vectors = new RememberedVectors(local.Length == 0 ? null : Path.Combine(local, "triage", "sentence-vectors"));
var fits = local.Length == 0 ? null : new RememberedFits(Path.Combine(local, "triage", "fits"));

return await TriageCommand.RunAsync(args, Console.Out, Console.Error, TimeProvider.System, new SentenceVectors(vectors), fits);
