' Types into a sheet and saves it as CSV: each line of the file "typed" is a cell, a TAB and
' what is typed there. EnterString is what the input line calls: the text goes through the
' parser that would make dates, numbers and formulas of it, unless the cell is formatted as
' text. What it has not is the correction of marks while typing; tests/template/keys has.
Function Argument(name As String, value)
	Dim one As New com.sun.star.beans.PropertyValue
	one.Name = name
	one.Value = value
	Argument = one
End Function

Sub Fill(sheet As String, typed As String, saved As String)
	Dim text As String, file As Integer, tab As Integer
	document = StarDesktop.loadComponentFromURL(ConvertToURL(sheet), "_blank", 0, _
		Array(Argument("Hidden", True)))
	frame = document.CurrentController.Frame
	dispatcher = createUnoService("com.sun.star.frame.DispatchHelper")
	file = FreeFile
	Open typed For Input As #file
	Do While Not Eof(file)
		Line Input #file, text
		tab = InStr(text, Chr(9))
		dispatcher.executeDispatch(frame, ".uno:GoToCell", "", 0, _
			Array(Argument("ToPoint", Left(text, tab - 1))))
		dispatcher.executeDispatch(frame, ".uno:EnterString", "", 0, _
			Array(Argument("StringName", Mid(text, tab + 1))))
	Loop
	Close #file
	document.storeToURL(ConvertToURL(saved), Array( _
		Argument("FilterName", "Text - txt - csv (StarCalc)"), _
		Argument("FilterOptions", "44,34,76,1,,0,false,true,false")))
	document.close(True)
End Sub
