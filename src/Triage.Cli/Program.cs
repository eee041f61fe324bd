using Triage.Cli;
using Triage.Search.Meaning;

// texts already understood, so that a command need not work them out again; only a cache
var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
var remembered = new RememberedVectors(local.Length == 0 ? null : Path.Combine(local, "triage", "sentence-vectors"));

return await TriageCommand.RunAsync(args, Console.Out, Console.Error, TimeProvider.System, new SentenceVectors(remembered));
