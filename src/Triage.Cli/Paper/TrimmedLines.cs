using System.Text;

namespace Triage.Cli.Paper;

/// <summary>Passes lines on without the blanks at their ends.</summary>
internal sealed class TrimmedLines(TextWriter inner) : TextWriter
{
    private readonly StringBuilder line = new();

    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value)
    {
        if (value == '\n')
        {
            inner.Write(line.ToString().TrimEnd() + "\n");
            line.Clear();
        }
        else
        {
            line.Append(value);
        }
    }

    public override void Flush() => inner.Flush();
}
