if (args is ["check", "--defaults"]) Console.Write(PileController.Settings.SettingsFile.Explain(PileController.Settings.PileSettings.AlderBank));
