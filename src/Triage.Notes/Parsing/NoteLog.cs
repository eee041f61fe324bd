using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Collects what reading one note turns up beside its record: problems, and the ids that it names.</summary>
internal sealed class NoteLog(string path)
{
    private readonly List<Problem> _problems = [];
    private readonly List<Reference> _references = [];

    public bool HasError => _problems.Any(p => p.Severity == Severity.Error);

    public ImmutableArray<Problem> Problems => [.. _problems.OrderBy(p => (p.Line, p.Column))];

    public ImmutableArray<Reference> References => [.. _references.OrderBy(r => (r.Line, r.Column))];

    public void Add(int line, int column, ProblemText text) => Add(line, column, text, text.Severity);

    public void Add(YamlNode at, ProblemText text) => Add(at.Line, at.Column, text);

    public void Add(YamlNode at, ProblemText text, Severity severity) => Add(at.Line, at.Column, text, severity);

    public void Refer(ReferenceKind kind, YamlScalar at, string? within) =>
        _references.Add(new Reference(kind, at.Text, at.Line, at.Column, within));

    public void Refer(Reference reference) => _references.Add(reference);

    private void Add(int line, int column, ProblemText text, Severity severity) =>
        _problems.Add(new Problem(path, line, column, severity, text.What, text.Instead));
}
