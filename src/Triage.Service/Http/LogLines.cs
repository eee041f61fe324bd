using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;
using Triage.Notes;

namespace Triage.Service.Http;

/// <summary>The log as a terminal may have it: what strangers put into addresses and notes stays on its line and is never obeyed.</summary>
internal sealed class LogLines() : ConsoleFormatter(Format)
{
    public const string Format = "lines";

    public override void Write<TState>(in LogEntry<TState> entry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        textWriter.WriteLine($"{Word(entry.LogLevel)}: {entry.Category}: {Printable.Line(entry.Formatter(entry.State, entry.Exception))}");
        if (entry.Exception is { } exception)
            textWriter.WriteLine(Printable.Text(exception.ToString()));
    }

    private static string Word(LogLevel level) => level switch
    {
        LogLevel.Critical or LogLevel.Error => "error",
        LogLevel.Warning => "warning",
        _ => "info",
    };
}
