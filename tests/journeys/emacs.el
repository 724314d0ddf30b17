;;; emacs.el --- Run inside Emacs by emacs.test.ts -*- lexical-binding: t -*-
;;; Commentary:
;; Opens a plan with the mode that we ship, writes down the findings that eglot hands to flymake, makes a comment of the
;; line of the first one, and writes down what is left.
;;; Code:

(package-initialize)
(require 'json)
(require 'eglot)
(defvar screed-journey (json-read-file (getenv "SCREED_JOURNEY")))
(defun screed-given (key) (alist-get key screed-journey))
(load (screed-given 'mode))

(defun screed-seen ()
  "What flymake shows now."
  (mapcar (lambda (each)
            `((line . ,(1- (line-number-at-pos (flymake-diagnostic-beg each))))
              (message . ,(flymake-diagnostic-text each))))
          (flymake-diagnostics)))

(defun screed-wait (done)
  "Wait until DONE gives something; give it."
  (let ((end (+ (float-time) (screed-given 'patience))) (result nil))
    (while (and (not (setq result (funcall done))) (< (float-time) end))
      (accept-process-output nil 0.05)
      (flymake-start))
    result))

(setq eglot-sync-connect t
      eglot-server-programs `((screed-mode . ,(append (screed-given 'command) nil))))
(find-file (screed-given 'file))
(apply #'eglot (eglot--guess-contact))
(screed-wait (lambda () (flymake-diagnostics)))
(let* ((before (screed-seen)) (first (car before)))
  (when first
    (goto-char (point-min))
    (forward-line (alist-get 'line first))
    (insert "# ")
    (eglot--signal-textDocument/didChange)
    (screed-wait (lambda () (not (member (alist-get 'message first) (mapcar (lambda (each) (alist-get 'message each)) (screed-seen)))))))
  (with-temp-file (screed-given 'results)
    (insert (json-encode `((mode . ,(symbol-name (buffer-local-value 'major-mode (get-file-buffer (screed-given 'file)))))
                           (before . ,(vconcat before))
                           (after . ,(with-current-buffer (get-file-buffer (screed-given 'file)) (vconcat (screed-seen)))))))))
(set-buffer-modified-p nil)
(kill-emacs 0)
;;; emacs.el ends here
