using System.Text.Json;
using Spectre.Console;
using Spectre.Console.Rendering;
using Triage.Notes;

namespace Triage.Cli.Paper;

/// <summary>Where results are written: 80 columns and no colour, or as wide and colourful as the terminal is.</summary>
internal sealed class Sheet
{
    private const int Width = 80, Widest = 110, Narrowest = 40;

    private readonly IAnsiConsole console;
    private readonly TextWriter output;

    public Sheet(TextWriter output)
    {
        IsTerminal = ReferenceEquals(output, Console.Out) && !Console.IsOutputRedirected;
        this.output = IsTerminal ? output : new TrimmedLines(output);
        console = AnsiConsole.Create(new()
        {
            Ansi = IsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = IsTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(this.output),
        });
        console.Profile.Width = IsTerminal ? Math.Clamp(Console.WindowWidth, Narrowest, Widest) : Width;
        console.Profile.Capabilities.Unicode = true;
    }

    /// <summary>It is a terminal.</summary>
    public bool IsTerminal { get; }

    public static Style Strong { get; } = new(decoration: Decoration.Bold);

    public static Style Quiet { get; } = new(decoration: Decoration.Dim);

    public static Style Warning { get; } = new(Color.Yellow, decoration: Decoration.Bold);

    /// <summary>As it is, unwrapped.</summary>
    public void Raw(string text) => output.WriteLine(text);

    /// <summary>A result: as JSON or as text.</summary>
    public ExitCode Show(object page, Action<Sheet> write, bool json)
    {
        if (json)
            Raw(JsonSerializer.Serialize(page, WireFormat.Options));
        else
            write(this);
        return ExitCode.Ok;
    }

    public void Blank() => output.WriteLine();

    /// <summary>A blank line and a heading.</summary>
    public void Heading(string text)
    {
        Blank();
        Title(text);
    }

    public void Title(string text) => Write(new Text(Printable.Line(text) + "\n", Strong));

    /// <summary>A paragraph, wrapped.</summary>
    public void Say(string text, int indent = 0, Style? style = null) =>
        Write(new Padder(new Text(Printable.Text(text), style ?? Style.Plain), new(indent, 0, 0, 0)));

    /// <summary>A mark and a paragraph that hangs from it.</summary>
    /// <param name="mark">Our own words or a number; printed as it is.</param>
    public void Item(string mark, string text, int indent = 2, Style? style = null) =>
        Hang(mark, indent, mark.Length + 1, new Text(Printable.Text(text), style ?? Style.Plain), style);

    /// <summary>A label and what belongs to it.</summary>
    public void Field(string label, string text, int width = 14) => Hang(label, 2, Math.Max(width, label.Length + 1), new Text(Printable.Text(text)), Quiet);

    public void Write(IRenderable renderable) => console.Write(renderable);

    private void Hang(string mark, int indent, int width, IRenderable text, Style? style)
    {
        var grid = new Grid();
        grid.AddColumn(new GridColumn { Width = indent + width, NoWrap = true, Padding = new(0, 0, 0, 0) });
        grid.AddColumn(new GridColumn { Padding = new(0, 0, 0, 0) });
        grid.AddRow(new Text(new string(' ', indent) + mark, style ?? Style.Plain), text);
        Write(grid);
    }
}
