using System.Collections.Immutable;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Triage.Notes.Parsing;

/// <summary>
/// Front matter as a tree with places, built event by event so that depth, aliases and size are stopped before they cost anything.
/// </summary>
internal sealed class YamlTree
{
    private readonly string _content;
    private readonly int _offset;
    private readonly int _line;
    private readonly YamlLimits _limits;
    private readonly Parser _parser;
    private readonly Dictionary<string, YamlNode> _anchors = [];
    private int _aliases;
    private int _nodes;

    private YamlTree(string content, int start, int end, int line, YamlLimits limits)
    {
        (_content, _offset, _line, _limits) = (content, start, line, limits);
        _parser = new Parser(new StringReader(content[start..end]));
    }

    /// <param name="line">Line of the file on which <paramref name="start"/> lies, from 1.</param>
    /// <exception cref="NoteSyntaxException">It is not YAML, or too much of it.</exception>
    public static YamlNode? Read(string content, int start, int end, int line, YamlLimits limits)
    {
        try
        {
            return new YamlTree(content, start, end, line, limits).ReadDocument();
        }
        catch (YamlException e)
        {
            throw YamlMistake.Of(e, content, start, end, line);
        }
    }

    private YamlNode? ReadDocument()
    {
        Next();
        if (Next() is StreamEnd)
        {
            return null;
        }

        var root = ReadNode(Next(), 1);
        Next();
        var after = Next();
        return after is StreamEnd ? root : throw Stop(after, NoteProblems.SecondDocument());
    }

    /// <summary>The parser trips over itself on some unclosed brackets instead of naming them.</summary>
    private ParsingEvent Next()
    {
        var last = _parser.Current;
        try
        {
            _parser.MoveNext();
        }
        catch (Exception e) when (e is not YamlException && last is not null)
        {
            throw Stop(last, NoteProblems.OpenBracket());
        }

        return _parser.Current!;
    }

    private YamlNode ReadNode(ParsingEvent from, int depth)
    {
        if (depth > _limits.Depth)
        {
            throw Stop(from, NoteProblems.TooDeep(_limits.Depth));
        }

        var node = from switch
        {
            AnchorAlias alias => ReadAlias(alias),
            Scalar scalar => ReadScalar(scalar),
            SequenceStart sequence => ReadSequence(sequence, depth),
            MappingStart mapping => ReadMapping(mapping, depth),
            _ => throw Stop(from, NoteProblems.BrokenYaml("unexpected end")),
        };
        if (from is NodeEvent { Anchor.IsEmpty: false } named)
        {
            _anchors[named.Anchor.Value] = node;
        }

        return node;
    }

    private YamlScalar ReadScalar(Scalar scalar)
    {
        Count(1, scalar);
        return new YamlScalar
        {
            Start = At(scalar.Start),
            End = Trimmed(At(scalar.Start), At(scalar.End)),
            Line = LineOf(scalar.Start),
            Column = (int)scalar.Start.Column,
            Text = scalar.Value,
            Quoted = scalar.Style is not (ScalarStyle.Plain or ScalarStyle.Any),
        };
    }

    private YamlNode ReadAlias(AnchorAlias alias)
    {
        if (++_aliases > _limits.Aliases)
        {
            throw Stop(alias, NoteProblems.TooManyAliases(_limits.Aliases));
        }

        if (!_anchors.TryGetValue(alias.Value.Value, out var target))
        {
            throw Stop(alias, NoteProblems.UnknownAlias(alias.Value.Value));
        }

        Count(target.Size, alias);
        return target with
        {
            Start = At(alias.Start),
            End = At(alias.End),
            Line = LineOf(alias.Start),
            Column = (int)alias.Start.Column,
            IsAlias = true,
        };
    }

    private YamlSequence ReadSequence(SequenceStart start, int depth)
    {
        Count(1, start);
        var items = ImmutableArray.CreateBuilder<YamlNode>();
        ParsingEvent e;
        while ((e = Next()) is not SequenceEnd)
        {
            items.Add(ReadNode(e, depth + 1));
        }

        var flow = start.Style == SequenceStyle.Flow;
        return new YamlSequence
        {
            Start = At(start.Start),
            End = flow || items.Count == 0 ? AfterBracket(e) : items[^1].End,
            Line = LineOf(start.Start),
            Column = (int)start.Start.Column,
            Size = 1 + items.Sum(i => i.Size),
            Items = items.ToImmutable(),
            Flow = flow,
        };
    }

    /// <summary>A single pair without braces in a list, <c>[a: b]</c>, comes without a place; its field's is taken.</summary>
    private YamlMapping ReadMapping(MappingStart start, int depth)
    {
        Count(1, start);
        var fields = ImmutableArray.CreateBuilder<YamlField>();
        var lines = new Dictionary<string, int>();
        ParsingEvent e;
        while ((e = Next()) is not MappingEnd)
        {
            if (ReadNode(e, depth + 1) is not YamlScalar key)
            {
                throw Stop(e, NoteProblems.FieldNameNotText());
            }

            if (!lines.TryAdd(key.Text, key.Line))
            {
                throw Stop(e, NoteProblems.DuplicateField(key.Text, lines[key.Text]));
            }

            fields.Add(new YamlField(key, ReadNode(Next(), depth + 1)));
        }

        var flow = start.Style == MappingStyle.Flow;
        var pair = flow && depth > 1 && start.Start.Index == 0;
        return new YamlMapping
        {
            Start = pair ? fields[0].Key.Start : At(start.Start),
            End = (flow && !pair) || fields.Count == 0 ? AfterBracket(e) : Math.Max(fields[^1].Value.End, fields[^1].Key.End),
            Line = pair ? fields[0].Key.Line : LineOf(start.Start),
            Column = pair ? fields[0].Key.Column : (int)start.Start.Column,
            Size = 1 + fields.Sum(f => f.Key.Size + f.Value.Size),
            Fields = fields.ToImmutable(),
            Flow = flow,
        };
    }

    private void Count(int nodes, ParsingEvent at)
    {
        _nodes += nodes;
        if (_nodes > _limits.Nodes)
        {
            throw Stop(at, NoteProblems.TooManyNodes(_limits.Nodes));
        }
    }

    /// <summary>The parser gives the place of the closing bracket as both ends of it.</summary>
    private int AfterBracket(ParsingEvent end) => At(end.Start) + 1;

    private int At(Mark mark) => _offset + (int)mark.Index;

    private int LineOf(Mark mark) => _line + (int)mark.Line - 1;

    private int Trimmed(int start, int end)
    {
        while (end > start && char.IsWhiteSpace(_content[end - 1]))
        {
            end--;
        }

        return end;
    }

    private NoteSyntaxException Stop(ParsingEvent at, ProblemText text) => new(LineOf(at.Start), (int)at.Start.Column, text);
}
