using Triage.Cli;
using Triage.Search.Meaning;
using Triage.Workshop.Model;

// texts already understood and fits already made, so that a command need not work them out again; only caches
var local = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData);
var vectors = new RememberedVectors(local.Length == 0 ? null : Path.Combine(local, "triage", "sentence-vectors"));
var fits = local.Length == 0 ? null : new RememberedFits(Path.Combine(local, "triage", "fits"));

// only this user can look into XDG_RUNTIME_DIR, and it is emptied when they log out (XDG Base Directory Specification)
var runtime = Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR") is { } session && Path.IsPathRooted(session) && Directory.Exists(session) ? session : local;

return await TriageCommand.RunAsync(
    args, Console.Out, Console.Error, TimeProvider.System, new SentenceVectors(vectors), fits, runtime.Length == 0 ? null : Path.Combine(runtime, "triage", "served"));
