namespace Triage.Service;

/// <summary>The bench cannot be served; the message says why and what to do.</summary>
public sealed class CannotServeException : Exception
{
    public CannotServeException()
    {
    }

    public CannotServeException(string message) : base(message)
    {
    }

    public CannotServeException(string message, Exception inner) : base(message, inner)
    {
    }
}
