namespace PileController.Panel.Sight;

/// <summary>The colours a person chose on the page.</summary>
internal enum PanelScheme
{
    /// <summary>As the person's system has them.</summary>
    System = 0,

    /// <summary>Dark on light.</summary>
    Light,

    /// <summary>Light on dark.</summary>
    Dark,
}
