using Triage.Cli;

return await TriageCommand.RunAsync(args, Console.Out, Console.Error, TimeProvider.System);
